using FleetWake.Logbook.Engines;

namespace FleetWake.Demo;

/// <summary>An hour meter read without its decimal point: 412.6 h went down as 4126. Later readings are right, so the meter seems to run back.</summary>
internal static class MeterSlip
{
    public static void Godwit(Notebook log)
    {
        var life = Life.Healthy(log, Fleet.Named("Godwit"));
        Usual.Years(log, life);
        var at = DockCalendar.At(log.Days.DaysAgo(62), 16, 35);
        var engine = life.Boat.Engine("single");
        log.Write(Pen.At(life.Boat.Dock, life.Dice), at, engine + " meter slip", s => new ReadHours(
            s, engine, Math.Round(10 * log.Meter(life.Boat, "single", at))));
    }
}
