namespace FleetWake.Logbook.Entries;

/// <summary>
/// Which entries count, over one log or over several that bear on each other. One record may lie on two streams, and
/// its correction on a third: a tag typed wrong lies with one prop and is amended on another's log, so logs are
/// settled together, by entry. Without recursion, for a chain may be as long as a log.
/// </summary>
internal sealed class Settlement
{
    private readonly Dictionary<Guid, IFact> byId = [];
    private readonly Dictionary<Guid, Guid> originals = [];
    private readonly HashSet<Guid> retracted = [];
    private readonly HashSet<Guid> counting = [];
    private readonly HashSet<Guid> misfits = [];
    private readonly HashSet<Guid> reaching = [];

    private Settlement(IReadOnlyList<IReadOnlyList<IFact>> logs)
    {
        Order = Comparer<Entry>.Create(Compare);
        foreach (var fact in logs.SelectMany(l => l)) byId.TryAdd(fact.Entry.Id, fact);

        // A trial cannot replace a strike: the strike stands, the misfit does not count, and somebody is asked.
        foreach (var fact in byId.Values.Where(f => f is not Retracted))
        {
            if (fact.Entry.Amends is { } named && byId.TryGetValue(named, out var other) && Kind(fact) != Kind(other)) misfits.Add(fact.Entry.Id);
        }

        foreach (var log in logs) Reach(log);
        Retract();
        foreach (var chain in byId.Values.Where(f => f is not Retracted).GroupBy(f => Original(f.Entry.Id)))
        {
            if (retracted.Contains(chain.Key) || misfits.Contains(chain.Key)) continue;
            var last = chain.Where(f => !retracted.Contains(f.Entry.Id))
                .OrderBy(f => f.Entry.Amends is not null)
                .ThenBy(f => f.Entry, Comparer<Entry>.Create(EntryOrder.CompareTyped))
                .LastOrDefault();
            if (last is not null) counting.Add(last.Entry.Id);
        }
    }

    /// <summary>
    /// The order of things, in which a corrected record keeps its place among those of its instant: a dock writes whole
    /// minutes, and the device's counter of a correction says when it was typed, not what came first.
    /// </summary>
    public IComparer<Entry> Order { get; }

    /// <summary>Settles the facts of one log, in any order.</summary>
    public static Settlement Of(IReadOnlyList<IFact> log) => new([log]);

    /// <summary>Settles several logs together. Where two facts share an entry, the one on the earlier log is the record.</summary>
    public static Settlement Of(IEnumerable<FactLog> logs) => new([.. logs.Select(l => (IReadOnlyList<IFact>)l.Facts)]);

    /// <summary>Whether an entry counts: not taken back, and the last word of its record.</summary>
    public bool Counts(Entry entry) => counting.Contains(entry.Id);

    /// <summary>Whether a fact corrects an entry that is on none of the logs, takes back one that is not on its own, or corrects one of another kind.</summary>
    public bool NamesNothing(IFact fact) =>
        (fact is Retracted r ? r.Retracts : fact.Entry.Amends) is { } named
        && (!byId.ContainsKey(named) || misfits.Contains(fact.Entry.Id) || (fact is Retracted && !reaching.Contains(fact.Entry.Id)))
        && !retracted.Contains(fact.Entry.Id);

    /// <summary>
    /// The entry that a record began with, whatever amended it since; it may lie on no log. Entries that amend each
    /// other are a device's error: the smallest id of their circle stands for all.
    /// </summary>
    public Guid Original(Guid entry)
    {
        var path = new List<Guid>();
        var on = new HashSet<Guid>();
        var at = entry;
        Guid? found = null;
        while (found is null && !originals.TryGetValue(at, out _) && on.Add(at))
        {
            path.Add(at);
            if (!misfits.Contains(at) && byId.TryGetValue(at, out var fact) && fact.Entry.Amends is { } amended) at = amended;
            else found = at;
        }

        var original = found ?? (originals.TryGetValue(at, out var known) ? known : path.Skip(path.IndexOf(at)).Min());
        foreach (var id in path) originals[id] = original;
        return original;
    }

    /// <summary>The kind of record that a fact came by: a notice on another stream is of its record's kind.</summary>
    private static Type Kind(IFact fact) => fact switch
    {
        Props.PropIssued => typeof(Mountings.PropMounted),
        Props.PropReturned => typeof(Mountings.PropRemoved),
        Props.PropFound => typeof(Mountings.FoundFitted),
        Engines.EngineInstalled => typeof(Engines.EngineFitted),
        Engines.EngineTakenOff => typeof(Engines.EngineRemoved),
        _ => fact.GetType(),
    };

    private int Compare(Entry? x, Entry? y)
    {
        if (x is null || y is null) return EntryOrder.Instance.Compare(x, y);
        var byInstant = x.Happened().UtcTicks.CompareTo(y.Happened().UtcTicks);
        if (byInstant != 0) return byInstant;
        var byOriginal = EntryOrder.Tie(First(x), First(y));
        return byOriginal != 0 ? byOriginal : EntryOrder.Tie(x, y);
    }

    private Entry First(Entry entry) => entry.Amends is not null && byId.TryGetValue(Original(entry.Id), out var first) ? first.Entry : entry;

    /// <summary>
    /// A retraction that names the wrong boat must not free another that happens to be settled along: it takes back only
    /// what has a fact on its own log. Of a record that is still to come, an amendment there will do.
    /// </summary>
    private void Reach(IReadOnlyList<IFact> log)
    {
        var retractions = log.OfType<Retracted>().ToList();
        if (retractions.Count == 0) return;
        var there = log.Select(f => f.Entry.Id).Concat(log.Select(f => f.Entry.Amends).OfType<Guid>().Where(a => !byId.ContainsKey(a))).ToHashSet();
        reaching.UnionWith(retractions.Where(r => there.Contains(r.Retracts)).Select(r => r.Entry.Id));
    }

    /// <summary>
    /// Takes back what a retraction names unless that retraction is itself taken back, from the retractions that
    /// nothing takes back inwards. Retractions in a circle are never reached, and take nothing back.
    /// </summary>
    private void Retract()
    {
        var retractions = byId.Values.OfType<Retracted>().Where(r => reaching.Contains(r.Entry.Id)).ToList();
        var open = retractions.CountBy(r => r.Retracts).ToDictionary(c => c.Key, c => c.Value);
        var ready = new Queue<Retracted>(retractions.Where(r => !open.ContainsKey(r.Entry.Id)));
        while (ready.TryDequeue(out var next))
        {
            if (!retracted.Contains(next.Entry.Id)) retracted.Add(next.Retracts);
            if (--open[next.Retracts] == 0 && byId.GetValueOrDefault(next.Retracts) is Retracted inner && reaching.Contains(inner.Entry.Id)) ready.Enqueue(inner);
        }
    }
}
