using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Strikes;

/// <summary>The prop or the lower unit hit something.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Object">What it hit.</param>
/// <param name="Severity">How hard, by the look of it.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
[StoredAs("strike_reported", 1)]
public sealed record StrikeReported(Entry Entry, string Boat, Position Position, StruckObject Object, StrikeSeverity Severity, double? Hours) : IMetered;

/// <summary>What was hit.</summary>
public enum StruckObject
{
    /// <summary>Nobody knows.</summary>
    Unknown,

    /// <summary>Rock or reef.</summary>
    Rock,

    /// <summary>Sand, mud or gravel.</summary>
    Sand,

    /// <summary>Log or other driftwood.</summary>
    Wood,

    /// <summary>Rope, net or fishing line.</summary>
    Line,

    /// <summary>Dock, mooring or another boat.</summary>
    Structure,
}

/// <summary>How hard a strike was, by the look of the blades. The scale is our own: no published one exists for small props.</summary>
public enum StrikeSeverity
{
    /// <summary>Touched, no mark.</summary>
    NoMark,

    /// <summary>Paint or edge scuffed.</summary>
    Scuffed,

    /// <summary>Edge chipped or nicked.</summary>
    Chipped,

    /// <summary>A blade bent.</summary>
    Bent,

    /// <summary>Blade material missing, or the hub let go.</summary>
    Broken,
}

/// <summary>Records a strike.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Object">What it hit.</param>
/// <param name="Severity">How hard, by the look of it.</param>
/// <param name="Hours">Hour-meter reading [h].</param>
public sealed record ReportStrike(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    [property: OneOf(typeof(StruckObject))] string? Object,
    [property: OneOf(typeof(StrikeSeverity))] string? Severity,
    double? Hours = null) : ICommand<ReportStrike>
{
    /// <inheritdoc/>
    public static string Kind => "strike_reported";

    /// <inheritdoc/>
    public static ReportStrike Example => new(Examples.At(10, "2026-05-20T15:40:00"), Examples.Boat, "single", "rock", "chipped");

    /// <inheritdoc/>
    public static string Summary => "Records that a prop or lower unit hit something.";

    /// <inheritdoc/>
    public static Decision Decide(ReportStrike command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var what = check.OneOf<StruckObject>(command.Object, "/object");
        var severity = check.OneOf<StrikeSeverity>(command.Severity, "/severity");
        var hours = check.Hours(command.Hours, "/hours");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new StrikeReported(entry!, boat, position, what, severity, hours))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
