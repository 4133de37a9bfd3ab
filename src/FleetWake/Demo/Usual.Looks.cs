using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Demo;

/// <content>Looks at prop and shaft, and small strikes.</content>
internal static partial class Usual
{
    private static readonly string[][] SmallMarks = [[], [], [], ["edge_wear"], ["corrosion"], ["growth"], ["chips"]];

    /// <summary>The six-monthly look at a sound prop, now and then with a pitch gauge.</summary>
    private static void Look(Notebook log, Life life, string position, DateOnly day)
    {
        var marks = life.Dice.Pick(SmallMarks);
        var pitch = life.On(position, day).Going.Pitch;
        var measured = life.Dice.Chance(0.15)
            ? Enumerable.Range(0, 3).Select(_ => Math.Round(pitch * (1 + life.Dice.Scatter(0.008)), 1)).ToList()
            : null;
        Inspect(log, life, position, AfterHours(life, day), "fit", marks, measured);
    }

    /// <summary>An inspection.</summary>
    public static Guid Inspect(
        Notebook log, Life life, string position, DateTimeOffset at, string verdict, string[] marks, IReadOnlyList<double>? measured = null) =>
        log.Write(Pen.At(life.Boat.Dock, life.Dice), at, $"{life.Boat.Id} {position} look", s => new Inspect(
            s, life.Boat.Id, position, verdict, marks, measured, log.Meter(life.Boat, position, at), life.Boat.Seen));

    /// <summary>A strike.</summary>
    public static Guid Strike(Notebook log, Life life, string position, DateTimeOffset at, string what, string severity) =>
        log.Write(Pen.At(life.Boat.Dock, life.Dice), at, $"{life.Boat.Id} {position} strike", s => new ReportStrike(
            s, life.Boat.Id, position, what, severity, log.Meter(life.Boat, position, at)));

    /// <summary>A strike that was looked at some days later and found harmless.</summary>
    public static Guid ClearedStrike(Notebook log, Life life, DateOnly day, string what, string severity, int lookedAfterDays)
    {
        var position = life.Boat.Positions[0];
        var strike = Strike(log, life, position, DockCalendar.At(day, 14, life.Dice.Whole(0, 59)), what, severity);
        Inspect(log, life, position, AfterHours(life, day.AddDays(lookedAfterDays)), "fit", severity == "chipped" ? ["chips"] : []);
        return strike;
    }

    private static DateTimeOffset AfterHours(Life life, DateOnly day) => DockCalendar.At(day, 17, life.Dice.Whole(30, 59));
}
