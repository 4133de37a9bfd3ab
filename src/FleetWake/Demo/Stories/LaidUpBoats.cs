using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;

namespace FleetWake.Demo;

/// <summary>Boats that lay ashore for a while, and one that left for good.</summary>
internal static class LaidUpBoats
{
    /// <summary>Out of the water and back, with the look that belongs between.</summary>
    public static void Prion(Notebook log)
    {
        var life = Ashore(log, Life.Healthy(log, Fleet.Named("Prion")), fromDaysAgo: 95, untilDaysAgo: 44);
        Usual.Inspect(log, life, "single", DockCalendar.At(log.Days.DaysAgo(45), 14, 30), "fit", []);
        Relaunch(log, life, daysAgo: 44);
    }

    /// <summary>Ashore now, and expected back in the water in twelve days: until then nothing is asked of it but the look before.</summary>
    public static void Wigeon(Notebook log) => Ashore(log, Newcomer(log, "Wigeon"), fromDaysAgo: 70, untilDaysAgo: -12);

    /// <summary>Back in the water ten days ago, and nobody looked first.</summary>
    public static void Teal(Notebook log) => Relaunch(log, Ashore(log, Newcomer(log, "Teal"), fromDaysAgo: 100, untilDaysAgo: 10), daysAgo: 10);

    /// <summary>Sold with its engine; the prop had corroded and was scrapped.</summary>
    public static void Pochard(Notebook log)
    {
        const int sold = 200;
        var life = Life.With(Fleet.Named("Pochard"), log.Days.DaysAgo(420), (_, going) => going);
        log.KeepAshore(life.Boat, log.Days.DaysAgo(sold), log.Days.Today);
        Usual.Years(log, life);
        var at = DockCalendar.At(log.Days.DaysAgo(sold), 11, 30);
        Usual.Remove(log, life, "single", "worn", new Pen(Devices.Mere1, "mech-06"), at.AddHours(-2));
        log.Write(Pen.Office, at, "P-141 scrapped", s => new RetireProp(s, "P-141", "corroded"));
        log.Write(Pen.Office, at, "pochard sold", s => new RetireBoat(s, "pochard", "sold"));
        log.Write(Pen.Office, at, "pochard engine", s => new RemoveEngine(s, "pochard", "single", "e-pochard", log.Meter(life.Boat, "single", at)));
    }

    private static Life Newcomer(Notebook log, string name) => Life.With(Fleet.Named(name), log.Days.DaysAgo(260), (_, going) => going);

    /// <summary>Tells its rounds too, and the look with which it was laid up.</summary>
    private static Life Ashore(Notebook log, Life life, int fromDaysAgo, int untilDaysAgo)
    {
        var (from, until) = (log.Days.DaysAgo(fromDaysAgo), log.Days.DaysAgo(untilDaysAgo));
        log.KeepAshore(life.Boat, from, until);
        Usual.Years(log, life);
        Usual.Inspect(log, life, "single", DockCalendar.At(from.AddDays(-1), 16, 40), "fit", ["growth"]);
        log.Write(Pen.At(life.Boat.Dock, life.Dice), DockCalendar.At(from, 10, 0), life.Boat.Id + " laid up", s => new LayUp(s, life.Boat.Id, $"{until:yyyy-MM-dd}"));
        return life;
    }

    private static void Relaunch(Notebook log, Life life, int daysAgo) => log.Write(
        Pen.At(life.Boat.Dock, life.Dice), DockCalendar.At(log.Days.DaysAgo(daysAgo), 8, 15), life.Boat.Id + " relaunched", s => new RelaunchBoat(s, life.Boat.Id));
}
