using System.Text.Json.Serialization;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mountings;

/// <summary>A mounting: the time a prop was fitted at a position.</summary>
/// <param name="Fitted">The fact that began it, as last amended; of a prop that was found there, the same with an empty sheet.</param>
/// <param name="To">The entry that ended it; null while it is fitted.</param>
public sealed record MountingSpan(PropMounted Fitted, Entry? To)
{
    /// <summary>The entry that first told of it: an amended sheet is the same mounting, and its alarms are the same alarms.</summary>
    public Guid Original { get; init; } = Fitted.Entry.Id;

    /// <summary>The order of things, where corrections were settled.</summary>
    [JsonIgnore]
    public IComparer<Entry> Order { get; init; } = EntryOrder.Instance;

    /// <summary>The prop was found there, and nobody recorded the fitting: it was on before, and prop and shaft were not in hand.</summary>
    public bool Found { get; init; }

    /// <summary>Id of the mounting.</summary>
    public string Id => Original.ToString();

    /// <summary>Whether anybody knows which prop it is.</summary>
    public bool PropKnown() => Fitted.Prop != FoundFitted.NotKnown;

    /// <summary>The prop as the subject of a sentence.</summary>
    internal string NameOfProp() => PropKnown() ? $"Prop {Fitted.Prop}" : "A prop whose tag nobody read";

    /// <summary>Whether something that happened under an entry lies in the mounting.</summary>
    public bool Holds(Entry entry) => Span.Holds(Order, Fitted.Entry, To, entry);

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
    /// <param name="engines">Where engines hung: an engine that leaves the position, for whatever boat, ends the mounting.</param>
    /// <param name="original">The entry that a record began with, for records that were amended.</param>
    /// <param name="order">The order of things, where corrections were settled.</param>
    public static Mountings Of(
        string boat, IReadOnlyList<IFact> facts, IReadOnlyList<EngineSpan> engines, Func<Guid, Guid>? original = null, IComparer<Entry>? order = null)
    {
        var spans = new List<MountingSpan>();
        var questions = new List<Contradiction>();

        // An engine takes its prop along. Its leaving may stand on another boat's log, and has its place in the order of things.
        var steps = engines.Where(e => e.To is not null).Select(e => (Entry: e.To!, Leaves: (Position?)e.Position, Fact: (IFact?)null))
            .Concat(facts.Select(f => (f.Entry, (Position?)null, (IFact?)f)))
            .OrderBy(s => s.Entry, order ?? EntryOrder.Instance);
        foreach (var (entry, leaves, fact) in steps)
        {
            if (leaves is { } left) Close(spans, left, entry);
            switch (fact)
            {
                case PropMounted mounted:
                    if (Close(spans, mounted.Position, mounted.Entry) is { } still)
                        questions.Add(AlreadyFitted(boat, still, mounted));
                    Begin(mounted, found: false);
                    break;
                case FoundFitted found:
                    var there = spans.FindIndex(s => s.To is null && s.Fitted.Position == found.Position);
                    if (there >= 0 && Named(spans[there], found.Prop) is { } goesOn)
                    {
                        spans[there] = goesOn;
                        break;
                    }

                    if (Close(spans, found.Position, found.Entry) is { } other) questions.Add(FoundAnother(boat, other, found));
                    Begin(Sheetless(found), found: true);
                    break;
                case PropRemoved removed:
                    var on = spans.FindIndex(s => s.To is null && s.Fitted.Position == removed.Position);
                    if (on >= 0 && Named(spans[on], removed.Prop) is { } named) spans[on] = named;
                    else questions.Add(NotThere(boat, on < 0 ? null : spans[on], removed));
                    Close(spans, removed.Position, removed.Entry);
                    break;
            }
        }

        return new Mountings(spans, questions);

        void Begin(PropMounted fitted, bool found) => spans.Add(new MountingSpan(fitted, null)
        {
            Original = original?.Invoke(fitted.Entry.Id) ?? fitted.Entry.Id,
            Order = order ?? EntryOrder.Instance,
            Found = found,
        });
    }

    /// <summary>The mounting as a record of a tag leaves it: a tag nobody could read says nothing, and one read later names the prop. Null when it is another prop.</summary>
    private static MountingSpan? Named(MountingSpan span, string? prop) =>
        prop is null || prop == span.Fitted.Prop ? span
        : span.PropKnown() ? null
        : span with { Fitted = span.Fitted with { Prop = prop } };

    private static PropMounted Sheetless(FoundFitted found) => new(
        found.Entry, found.Boat, found.Position, found.Prop ?? FoundFitted.NotKnown, found.Hours, null, null, null, null, null, null, null);

    private static MountingSpan? Close(List<MountingSpan> spans, Position position, Entry at)
    {
        var open = spans.FindIndex(s => s.To is null && s.Fitted.Position == position);
        if (open < 0) return null;
        return spans[open] = spans[open] with { To = at };
    }

    private static Contradiction AlreadyFitted(string boat, MountingSpan still, PropMounted mounted) => new(
        ContradictionKind.PropAlreadyFitted,
        [still.Fitted.Entry.Id, mounted.Entry.Id],
        $"{still.NameOfProp()} was still on record at {Words.Of(mounted.Position)} of {boat} when {mounted.Prop} was fitted there on {mounted.Entry.Date():yyyy-MM-dd}. When did {(still.PropKnown() ? still.Fitted.Prop : "it")} come off?");

    private static Contradiction FoundAnother(string boat, MountingSpan other, FoundFitted found) => new(
        ContradictionKind.FoundAnotherProp,
        [other.Fitted.Entry.Id, found.Entry.Id],
        $"Prop {found.Prop} was found at {Words.Of(found.Position)} of {boat} on {found.Entry.Date():yyyy-MM-dd}, and {other.Fitted.Prop} was on record there. When was it changed, and where is {other.Fitted.Prop}?");

    private static Contradiction NotThere(string boat, MountingSpan? off, PropRemoved removed) => new(
        ContradictionKind.NoPropToRemove,
        off is null ? [removed.Entry.Id] : [off.Fitted.Entry.Id, removed.Entry.Id],
        off is null
            ? $"A prop came off {Words.Of(removed.Position)} of {boat} on {removed.Entry.Date():yyyy-MM-dd}, and none was on record there. Which one was it, and since when?"
            : $"Prop {removed.Prop} came off {Words.Of(removed.Position)} of {boat} on {removed.Entry.Date():yyyy-MM-dd}, and {off.Fitted.Prop} was on record there. Which one was it?");
}
