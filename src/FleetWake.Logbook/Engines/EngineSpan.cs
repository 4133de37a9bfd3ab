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

    /// <summary>Whether an engine that came off ended this span: it came off the place it hung at.</summary>
    public bool EndedBy(EngineRemoved removed) => Boat == removed.Boat && Position == removed.Position && To?.Id == removed.Entry.Id;

    /// <summary>Spans of the engines of some boats. An engine hung elsewhere later has left where it was, whether or not anybody said so.</summary>
    /// <param name="facts">Every fact that counts of all boats concerned; those of hanging and taking off are looked at.</param>
    /// <param name="order">The order of things, where corrections were settled.</param>
    public static IReadOnlyList<EngineSpan> Of(IEnumerable<IFact> facts, IComparer<Entry>? order = null)
    {
        var spans = new List<EngineSpan>();
        foreach (var fact in facts.Where(f => f is EngineFitted or EngineRemoved).OrderBy(f => f.Entry, order ?? EntryOrder.Instance))
        {
            if (fact is EngineFitted fitted)
            {
                // Told twice that it hangs where it hangs: nothing moved, and its prop stays on.
                if (spans.Any(s => s.To is null && s.Engine == fitted.Engine && s.Boat == fitted.Boat && s.Position == fitted.Position)) continue;
                Close(spans, s => (s.Boat == fitted.Boat && s.Position == fitted.Position) || s.Engine == fitted.Engine, fitted.Entry);
                spans.Add(new EngineSpan(fitted.Boat, fitted.Position, fitted.Engine, fitted.Entry, null) { Order = order ?? EntryOrder.Instance });
            }
            else if (fact is EngineRemoved removed)
            {
                // The place is empty, whichever engine was said to have come off it.
                Close(spans, s => s.Boat == removed.Boat && s.Position == removed.Position, removed.Entry);
            }
        }

        return spans;
    }

    private static void Close(List<EngineSpan> spans, Func<EngineSpan, bool> leaves, Entry at)
    {
        for (var i = 0; i < spans.Count; i++)
        {
            if (spans[i].To is null && leaves(spans[i])) spans[i] = spans[i] with { To = at };
        }
    }
}
