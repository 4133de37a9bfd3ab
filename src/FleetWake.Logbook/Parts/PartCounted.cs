using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Parts;

/// <summary>Somebody counted what a dock has of a small part. What was told before no longer matters for that dock.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Part">Id of the part.</param>
/// <param name="Dock">Id of the dock.</param>
/// <param name="Quantity">How many lay there.</param>
[StoredAs("part_counted", 1)]
public sealed record PartCounted(Entry Entry, string Part, string Dock, int Quantity) : IFact;

/// <summary>Records a stock-take.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Part">Id of the part.</param>
/// <param name="Dock">Id of the dock.</param>
/// <param name="Quantity">How many lay there, 0 to 10000.</param>
public sealed record CountPart(Stamp? Entry, string? Part, string? Dock, int? Quantity) : ICommand<CountPart>
{
    /// <inheritdoc/>
    public static string Kind => "part_counted";

    /// <inheritdoc/>
    public static CountPart Example => new(Examples.At(221, "2026-06-01T17:00:00"), "pin-3x25", "north-pier", 41);

    /// <inheritdoc/>
    public static string Summary => "Records how many of a small part lie at a dock, counted.";

    /// <inheritdoc/>
    public static Decision Decide(CountPart command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var part = check.Id(command.Part, "/part");
        var dock = check.Id(command.Dock, "/dock");
        var quantity = check.Whole(command.Quantity, "/quantity", 0, PartsUsed.MostPieces, "pieces");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Part(part), new PartCounted(entry!, part, dock, quantity))], []));
    }
}
