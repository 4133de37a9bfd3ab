using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Hire;

namespace FleetWake.Demo;

/// <summary>
/// Redshank bent its prop on a rock and waited for a look. When Ruff's engine failed, Redshank's was hung on Ruff: a blow
/// that bends a prop may have reached the shaft, so the suspicion goes with the engine.
/// </summary>
internal static class MovedEngine
{
    private const int Moved = 20;

    public static void Redshank(Notebook log)
    {
        var (redshank, ruff) = (Newcomer(log, "Redshank"), Newcomer(log, "Ruff"));
        var pen = new Pen(Devices.Quay1, "mech-04");
        var day = log.Days.DaysAgo(Moved);
        Usual.Strike(log, redshank, "single", DockCalendar.At(log.Days.DaysAgo(Moved + 2), 15, 50), "rock", "bent");
        log.Write(Pen.Office, DockCalendar.At(log.Days.DaysAgo(Moved + 2), 16, 30), "redshank stays", s => new TakeOutOfHire(s, "redshank", "strike"));

        TakeOff(log, ruff, pen, DockCalendar.At(day, 8, 30));
        TakeOff(log, redshank, pen, DockCalendar.At(day, 9, 10));
        var hung = DockCalendar.At(day, 11, 0);
        var hours = log.Meter(redshank.Boat, "single", hung);
        log.Write(pen, hung, "e-redshank hung on ruff", s => new FitEngine(s, "ruff", "single", "e-redshank", hours));
        log.Write(pen, hung.AddMinutes(30), "ruff's prop back on", s => new Logbook.Mountings.MountProp(
            s, "ruff", "single", ruff.Boat.Tag("single"), hours, true, true, true, 35, "newton_metre", 1, true));
        log.Write(pen, DockCalendar.At(day.AddDays(1), 17, 15), "ruff re-torqued", s => new Logbook.Duties.RetorqueNut(
            s, "ruff", "single", 35, "newton_metre", true, Math.Round(hours + 4.2, 1)));
        log.Write(pen, DockCalendar.At(log.Days.DaysAgo(6), 16, 50), "e-redshank meter on ruff", s => new ReadHours(s, "e-redshank", Math.Round(hours + 13.8, 1)));
    }

    /// <summary>Its own rounds end on the day of the move.</summary>
    private static Life Newcomer(Notebook log, string name)
    {
        var life = Life.With(Fleet.Named(name), log.Days.DaysAgo(260), (_, going) => going);
        log.KeepAshore(life.Boat, log.Days.DaysAgo(Moved), log.Days.Today);
        Usual.Years(log, life);
        Usual.Inspect(log, life, "single", DockCalendar.At(log.Days.DaysAgo(80), 16, 20), "fit", []);
        return life;
    }

    private static void TakeOff(Notebook log, Life life, Pen pen, DateTimeOffset at) => log.Write(
        pen, at, life.Boat.Id + " engine off", s => new RemoveEngine(s, life.Boat.Id, "single", life.Boat.Engine("single"), log.Meter(life.Boat, "single", at)));
}
