using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Demo;

/// <summary>Records that do not come in the order of things. A phone that was silent for weeks stands in the table of devices.</summary>
internal static class OutOfOrder
{
    /// <summary>Bought used; the dock had it in hire for three weeks before the office came to register it.</summary>
    public static void Dovekie(Notebook log)
    {
        var life = Life.With(Fleet.Named("Dovekie"), log.Days.DaysAgo(300), (_, going) => going);
        Usual.Arrive(log, life, registeredLater: TimeSpan.FromDays(24));
        Usual.Trial(log, life, log.Days.DaysAgo(295));
        Usual.Rounds(log, life);
    }

    /// <summary>A borrowed boat that nobody registered: its records wait.</summary>
    public static void Loaner(Notebook log)
    {
        var pen = new Pen(Devices.Mole2, "mech-02");
        var day = log.Days.DaysAgo(17);
        log.Write(pen, DockCalendar.At(day, 10, 40), "loaner-7 trial", s => new RunTrial(
            s, "loaner-7", "wide_open", [Run(22.4, 40), Run(23.6, 220)], [new MeterSent("single", 512.3)], 2, 0));
        log.Write(pen, DockCalendar.At(day, 15, 5), "loaner-7 strike", s => new ReportStrike(s, "loaner-7", "single", "sand", "scuffed", 514.0));
    }

    public static void SentTwice(Notebook log)
    {
        var life = Life.Healthy(log, Fleet.Named("Smew"));
        Workshop.NewMeter(log, life, daysAgo: 92);
        Usual.Years(log, life);
        Handovers.Cleared(log, life, daysAgo: 5);
        var at = DockCalendar.At(log.Days.DaysAgo(52), 16, 5);
        log.SendTwice(Usual.Read(log, life, "single", at, at, new Pen(Devices.Mere1, "mech-06")));
    }

    /// <summary>Every meter at the mere, read on the spare phone on one day.</summary>
    public static void WrongClock(Notebook log)
    {
        var pen = new Pen(Devices.Spare, "mech-07");
        var at = DockCalendar.At(log.Days.DaysAgo(139), 15, 0);
        foreach (var boat in Fleet.All.Where(b => b.Dock == Docks.SallowMere))
        {
            at = at.AddMinutes(9);
            Usual.Read(log, Life.Healthy(log, boat), boat.Positions[0], at, at, pen);
        }
    }

    private static TrialRunSent Run(double knots, double heading) => new(knots, "kn", heading, [new TachometerSent("single", 5450)], 40);
}
