using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Parts;

/// <summary>Small parts as sent with a mounting, a re-torque or a duty.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="Quantity">How many, 1 to 10000.</param>
/// <param name="Dock">Id of the dock whose stock they came from.</param>
public sealed record PartSent(string? Part, int? Quantity, string? Dock = null);

/// <summary>Small parts as read from a record.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="Quantity">How many.</param>
/// <param name="Dock">Id of the dock whose stock they came from; null when nobody said.</param>
public sealed record PartTaken(string Part, int Quantity, string? Dock);

/// <summary>
/// The parts that a record of something else names. The record's own fact says nothing of them: each is a
/// <see cref="PartUsed"/> on its part's stream under the record's entry id, so amending or retracting the record carries them along.
/// </summary>
public static class PartsUsed
{
    /// <summary>More pieces than any dock keeps of one part.</summary>
    public const int MostPieces = 10_000;

    private const int MostParts = 20;

    /// <summary>Reads the list; a part stands in it once, for a stream holds an entry once.</summary>
    /// <param name="check">What collects the refusals.</param>
    /// <param name="parts">The list as sent; null is empty.</param>
    /// <param name="field">Where it stands, e.g. <c>/parts</c>.</param>
    public static IReadOnlyList<PartTaken> Read(Check check, IReadOnlyList<PartSent>? parts, string field)
    {
        var given = check.List(parts, field, 0, MostParts);
        check.Once(given.Select(p => p?.Part), field, "name each part once, with how many of it");
        return
        [
            .. given.Select((p, i) => new PartTaken(
                check.Id(p?.Part, $"{field}/{i}/part"),
                check.Whole(p?.Quantity, $"{field}/{i}/quantity", 1, MostPieces, "pieces"),
                check.MaybeId(p?.Dock, $"{field}/{i}/dock"))),
        ];
    }

    /// <summary>The facts on the parts' streams, under the entry of the record that named them.</summary>
    /// <param name="entry">The stamp of that record.</param>
    /// <param name="parts">The parts as read.</param>
    /// <param name="boat">The boat they were used on.</param>
    /// <param name="position">The position on it, if it is about one.</param>
    public static IEnumerable<Placed> Place(Entry entry, IReadOnlyList<PartTaken> parts, string? boat, Position? position) =>
        parts.Select(p => new Placed(StreamName.Part(p.Part), new PartUsed(entry, p.Part, p.Dock, p.Quantity, boat, position)));
}
