using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Hire;

namespace FleetWake.Demo;

/// <summary>What hirers pay for: one claim that is open, one that came to its end.</summary>
internal static class Damage
{
    /// <summary>
    /// A stainless prop bent on a rock. Stainless passes a blow on, so shaft and lower unit want a look; somebody has
    /// taken that on, nobody has looked yet. The office keeps the boat in and claims the deposit.
    /// </summary>
    public static void Gannet(Notebook log)
    {
        var (back, next) = (log.Days.DaysAgo(2), log.Days.DaysAgo(1));
        var life = Life.Healthy(log, Fleet.Named("Gannet"));
        Usual.Years(log, life, watchedUntil: 9);
        var strike = Usual.Strike(log, life, "single", DockCalendar.At(back, 14, 25), "rock", "bent");
        Handovers.Look(log, "Gannet", DockCalendar.At(back, 17, 10), "after_hire", "damage", "h-4471", photo: true);
        log.Write(Pen.Office, DockCalendar.At(back, 17, 30), "gannet stays", s => new TakeOutOfHire(s, "gannet", "strike"));
        log.Write(new Pen(Devices.Mole1, "mech-01"), DockCalendar.At(next, 8, 20), "gannet taken on", s => new TakeDuty(s, "gannet", "after-strike", "single"));

        var claim = Open(log, "gannet", strike, "h-4471", DockCalendar.At(next, 10, 0), deposit: 900, daysToClaim: 12);
        Costed(log, "gannet", claim, "estimate", 640, DockCalendar.At(next, 11, 30));
    }

    /// <summary>A chipped blade, estimated, dressed, invoiced and paid.</summary>
    public static void Settled(Notebook log, string boat, Guid strike, DateOnly day)
    {
        var claim = Open(log, boat, strike, "h-3207", DockCalendar.At(day.AddDays(1), 9, 40), deposit: 600, daysToClaim: 28);
        Costed(log, boat, claim, "estimate", 180, DockCalendar.At(day.AddDays(3), 10, 15));
        Costed(log, boat, claim, "invoice", 212.50m, DockCalendar.At(day.AddDays(9), 16, 0));
        log.Write(Pen.Office, DockCalendar.At(day.AddDays(20), 9, 0), $"{boat} claim closed", s => new CloseClaim(
            s, boat, claim, "recovered", 212.50m, OfficePapers.Money));
    }

    private static Guid Open(Notebook log, string boat, Guid strike, string hire, DateTimeOffset at, decimal deposit, int daysToClaim) =>
        log.Write(Pen.Office, at, $"{boat} claim", s => new OpenClaim(
            s, boat, "single", hire, strike, deposit, OfficePapers.Money, $"{DateOnly.FromDateTime(at.DateTime).AddDays(daysToClaim):yyyy-MM-dd}"));

    private static void Costed(Notebook log, string boat, Guid claim, string stage, decimal amount, DateTimeOffset at) =>
        log.Write(Pen.Office, at, $"{boat} claim {stage}", s => new CostClaim(s, boat, claim, stage, amount, OfficePapers.Money));
}
