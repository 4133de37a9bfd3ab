using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>A boat's hull was cleaned of growth. What its trials showed before no longer stands for it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
[StoredAs("hull_cleaned", 1)]
public sealed record HullCleaned(Entry Entry, string Boat) : IFact;

/// <summary>Records that a boat's hull was cleaned.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
public sealed record CleanHull(Stamp? Entry, string? Boat) : ICommand<CleanHull>
{
    /// <inheritdoc/>
    public static string Kind => "hull_cleaned";

    /// <inheritdoc/>
    public static CleanHull Example => new(Examples.At(102, "2026-07-06T17:00:00"), Examples.Boat);

    /// <inheritdoc/>
    public static string Summary => "Records that a boat's hull was cleaned of growth; its trials get a new baseline.";

    /// <inheritdoc/>
    public static Decision Decide(CleanHull command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new HullCleaned(entry!, boat))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
