using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Inspections;

/// <summary>Records an inspection.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Marks">What was seen.</param>
/// <param name="MeasuredPitchInches">Pitch of each blade as measured [in].</param>
/// <param name="Hours">Hour-meter reading [h].</param>
/// <param name="Seen">What was in hand or in view. After a hard strike on stainless, shaft and gear oil have to be among it for "fit" to clear it.</param>
public sealed record Inspect(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    [property: OneOf(typeof(Verdict))] string? Verdict,
    [property: OneOf(typeof(InspectionMark))] IReadOnlyList<string>? Marks = null,
    IReadOnlyList<double>? MeasuredPitchInches = null,
    double? Hours = null,
    [property: OneOf(typeof(InspectedPart))] IReadOnlyList<string>? Seen = null) : ICommand<Inspect>
{
    /// <inheritdoc/>
    public static string Kind => "inspected";

    /// <inheritdoc/>
    public static Inspect Example => new(Examples.At(11, "2026-05-20T17:00:00"), Examples.Boat, "single", "fit", ["chips"], [12.9, 12.8, 12.9]);

    /// <inheritdoc/>
    public static string Summary => "Records a look at prop, hub, shaft and seal, with its verdict.";

    /// <inheritdoc/>
    public static Decision Decide(Inspect command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var verdict = check.OneOf<Verdict>(command.Verdict, "/verdict");
        var marks = check.List(command.Marks, "/marks", 0, 20)
            .Select((word, i) => check.OneOf<InspectionMark>(word, $"/marks/{i}")).Distinct().ToList();
        var pitches = check.List(command.MeasuredPitchInches, "/measuredPitchInches", 0, 7)
            .Select((p, i) => check.Number(p, $"/measuredPitchInches/{i}", 3, 40, "in")).ToList();
        var hours = check.Hours(command.Hours, "/hours");
        var seen = command.Seen is null
            ? null
            : check.List(command.Seen, "/seen", 0, 5).Select((word, i) => check.OneOf<InspectedPart>(word, $"/seen/{i}")).Distinct().ToList();
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new Inspected(entry!, boat, position, marks, pitches, verdict, hours) { Seen = seen })],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
