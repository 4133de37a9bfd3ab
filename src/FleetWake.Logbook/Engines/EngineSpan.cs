using System.Text.Json.Serialization;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>The time an engine hung at a position, from the entry that hung it until the one that ended that.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Engine">The engine.</param>
/// <param name="From">The entry that began it.</param>
/// <param name="To">The entry that ended it; null while it hangs there.</param>
public sealed record EngineSpan(string Boat, Position Position, string Engine, Entry From, Entry? To)
{
    /// <summary>The order of things, where corrections were settled.</summary>
    [JsonIgnore]
    public IComparer<Entry> Order { get; init; } = EntryOrder.Instance;

    /// <summary>Whether something that happened under an entry lies in the span.</summary>
    public bool Holds(Entry entry) => Span.Holds(Order, From, To, entry);

    /// <summary>Spans of the engines of some boats. An engine hung elsewhere later has left where it was.</summary>
    /// <param name="fittings">Every fitting that counts, of all boats concerned.</param>
    /// <param name="order">The order of things, where corrections were settled.</param>
    public static IReadOnlyList<EngineSpan> Of(IEnumerable<EngineFitted> fittings, IComparer<Entry>? order = null)
    {
        var spans = new List<EngineSpan>();
        foreach (var fitted in fittings.OrderBy(f => f.Entry, order ?? EntryOrder.Instance))
        {
            // Told twice that it hangs where it hangs: nothing moved, and its prop stays on.
            if (spans.Any(s => s.To is null && s.Engine == fitted.Engine && s.Boat == fitted.Boat && s.Position == fitted.Position)) continue;
            for (var i = 0; i < spans.Count; i++)
            {
                var open = spans[i];
                var place = open.Boat == fitted.Boat && open.Position == fitted.Position;
                if (open.To is null && (place || open.Engine == fitted.Engine)) spans[i] = open with { To = fitted.Entry };
            }

            spans.Add(new EngineSpan(fitted.Boat, fitted.Position, fitted.Engine, fitted.Entry, null) { Order = order ?? EntryOrder.Instance });
        }

        return spans;
    }
}
