namespace FleetWake.Logbook.Entries;

/// <summary>What counts of a log: the last amendment of each entry in its place, retracted entries left out.</summary>
/// <param name="Facts">The facts that count, in the order of things.</param>
/// <param name="Unmatched">Amendments and retractions whose entry is not in the log.</param>
public sealed record Effective(IReadOnlyList<IFact> Facts, IReadOnlyList<IFact> Unmatched)
{
    /// <summary>
    /// Settles amendments and retractions. A retraction may itself be retracted. An amendment names the original
    /// or another amendment of it; of those that are not retracted the last typed counts, so retracting it restores
    /// the one before. Retracting the original takes its amendments with it.
    /// </summary>
    public static Effective Of(IReadOnlyList<IFact> log)
    {
        // One entry may lay a fact on this stream only once, so the entry id is the key.
        var byId = log.ToDictionary(f => f.Entry.Id);
        var retractions = log.OfType<Retracted>().ToLookup(r => r.Retracts);
        var memo = new Dictionary<Guid, bool>();

        var chains = log.Where(f => f is not Retracted).GroupBy(f => Root(f.Entry, byId));
        var counting = new List<IFact>();
        foreach (var chain in chains)
        {
            if (byId.TryGetValue(chain.Key, out _) && IsRetracted(chain.Key, retractions, memo)) continue;
            var last = chain.Where(f => !IsRetracted(f.Entry.Id, retractions, memo))
                .OrderBy(f => f.Entry.Amends is not null)
                .ThenBy(f => f.Entry, Comparer<Entry>.Create(EntryOrder.CompareTyped))
                .LastOrDefault();
            if (last is not null) counting.Add(last);
        }

        return new Effective(
            [.. counting.OrderBy(f => f.Entry, EntryOrder.Instance)],
            [
                .. log.Where(f => f is Retracted r ? !byId.ContainsKey(r.Retracts) && !IsRetracted(r.Entry.Id, retractions, memo)
                    : f.Entry.Amends is { } a && !byId.ContainsKey(a) && !IsRetracted(f.Entry.Id, retractions, memo)),
            ]);
    }

    private static Guid Root(Entry entry, Dictionary<Guid, IFact> byId)
    {
        var seen = new HashSet<Guid>();
        while (entry.Amends is { } amended && seen.Add(entry.Id))
        {
            if (!byId.TryGetValue(amended, out var original)) return amended;
            entry = original.Entry;
        }

        // Two entries that name each other: a device's error. The smaller id stands for both.
        return entry.Amends is null ? entry.Id : seen.Min();
    }

    private static bool IsRetracted(Guid entry, ILookup<Guid, Retracted> retractions, Dictionary<Guid, bool> memo)
    {
        if (memo.TryGetValue(entry, out var known)) return known;
        memo[entry] = false; // Retractions that name each other take nothing back.
        return memo[entry] = retractions[entry].Any(r => !IsRetracted(r.Entry.Id, retractions, memo));
    }
}
