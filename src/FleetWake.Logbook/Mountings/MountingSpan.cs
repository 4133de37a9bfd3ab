using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mountings;

/// <summary>A mounting: the time a prop was fitted at a position.</summary>
/// <param name="Fitted">The fact that began it; its entry id names the mounting.</param>
/// <param name="To">The entry that ended it; null while it is fitted.</param>
public sealed record MountingSpan(PropMounted Fitted, Entry? To)
{
    /// <summary>Id of the mounting.</summary>
    public string Id => Fitted.Entry.Id.ToString();

    /// <summary>Whether something that happened under an entry lies in the mounting.</summary>
    public bool Holds(Entry entry) => Span.Holds(Fitted.Entry, To, entry);

    /// <summary>Whether two mountings share some time.</summary>
    public bool Overlaps(MountingSpan other) => Span.Overlap(Fitted.Entry, To, other.Fitted.Entry, other.To);
}

/// <summary>Mountings of one boat and what contradicts itself in them.</summary>
/// <param name="Spans">The mountings, in order.</param>
/// <param name="Contradictions">Questions they raise.</param>
public sealed record Mountings(IReadOnlyList<MountingSpan> Spans, IReadOnlyList<Contradiction> Contradictions)
{
    /// <summary>Reads the mountings out of a boat's facts.</summary>
    /// <param name="boat">The boat's name for people.</param>
    /// <param name="facts">The facts that count, in order.</param>
    /// <param name="engines">Where engines hung: another engine at the position ends the mounting.</param>
    public static Mountings Of(string boat, IReadOnlyList<IFact> facts, IReadOnlyList<EngineSpan> engines)
    {
        var spans = new List<MountingSpan>();
        var questions = new List<Contradiction>();
        foreach (var fact in facts)
        {
            switch (fact)
            {
                case PropMounted mounted:
                    if (Close(spans, mounted.Position, mounted.Entry) is { } still)
                        questions.Add(AlreadyFitted(boat, still, mounted));
                    spans.Add(new MountingSpan(mounted, null));
                    break;
                case PropRemoved removed:
                    var off = Close(spans, removed.Position, removed.Entry);
                    if (off is null || (removed.Prop is not null && removed.Prop != off.Fitted.Prop))
                        questions.Add(NotThere(boat, off, removed));
                    break;
                case EngineFitted engine when engines.Any(e => e.To?.Id == engine.Entry.Id && e.Boat == engine.Boat && e.Position == engine.Position):
                    Close(spans, engine.Position, engine.Entry);
                    break;
            }
        }

        // An engine that was hung on another boat took its prop along, as far as this boat's record tells.
        foreach (var gone in engines.Where(e => e.To is not null && facts.All(f => f.Entry.Id != e.To.Id)))
        {
            var at = spans.FindIndex(s => s.Fitted.Position == gone.Position && s.Fitted.Boat == gone.Boat && s.Holds(gone.To!) && gone.Holds(s.Fitted.Entry));
            if (at >= 0) spans[at] = spans[at] with { To = gone.To };
        }

        return new Mountings(spans, questions);
    }

    private static MountingSpan? Close(List<MountingSpan> spans, Position position, Entry at)
    {
        var open = spans.FindIndex(s => s.To is null && s.Fitted.Position == position);
        if (open < 0) return null;
        return spans[open] = spans[open] with { To = at };
    }

    private static Contradiction AlreadyFitted(string boat, MountingSpan still, PropMounted mounted) => new(
        ContradictionKind.PropAlreadyFitted,
        [still.Fitted.Entry.Id, mounted.Entry.Id],
        $"Prop {still.Fitted.Prop} was still on record at {Words.Of(mounted.Position)} of {boat} when {mounted.Prop} was fitted there on {mounted.Entry.Date():yyyy-MM-dd}. When did {still.Fitted.Prop} come off?");

    private static Contradiction NotThere(string boat, MountingSpan? off, PropRemoved removed) => new(
        ContradictionKind.NoPropToRemove,
        off is null ? [removed.Entry.Id] : [off.Fitted.Entry.Id, removed.Entry.Id],
        off is null
            ? $"A prop came off {Words.Of(removed.Position)} of {boat} on {removed.Entry.Date():yyyy-MM-dd}, and none was on record there. Which one was it, and since when?"
            : $"Prop {removed.Prop} came off {Words.Of(removed.Position)} of {boat} on {removed.Entry.Date():yyyy-MM-dd}, and {off.Fitted.Prop} was on record there. Which one was it?");
}
