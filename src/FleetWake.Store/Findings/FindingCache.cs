using System.Collections.Concurrent;

namespace FleetWake.Store.Findings;

/// <summary>
/// Findings that were read lately. A stored finding never changes and its id says what it was made from, so that one in here
/// is never stale: only which of them is the present one has to be asked. Bounded, for a node may serve many operators.
/// </summary>
/// <param name="most">Findings kept at the most; beyond that, those that were not asked for longest go.</param>
public sealed class FindingCache(int most = FindingCache.UsualMost)
{
    /// <summary>A few hundred megabytes at the worst: a finding with some years of trials takes some tens of kilobytes.</summary>
    public const int UsualMost = 5_000;

    private readonly ConcurrentDictionary<(string Operator, string Id), Kept> kept = new();
    private readonly Lock trimming = new();
    private long round;

    /// <summary>How many are kept.</summary>
    public int Count => kept.Count;

    /// <summary>The findings of these ids in their order; those that are not kept are loaded, and those that do not exist left out.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="ids">Their ids.</param>
    /// <param name="load">Loads some.</param>
    public async Task<IReadOnlyList<StoredFinding>> OfAsync(
        string @operator, IReadOnlyList<string> ids, Func<IReadOnlyList<string>, Task<IReadOnlyList<StoredFinding>>> load)
    {
        ArgumentNullException.ThrowIfNull(ids);
        ArgumentNullException.ThrowIfNull(load);
        var now = Interlocked.Increment(ref round);
        var found = new Dictionary<string, StoredFinding>(ids.Count, StringComparer.Ordinal);
        var missing = new List<string>();
        foreach (var id in ids)
        {
            if (kept.TryGetValue((@operator, id), out var known))
            {
                known.Round = now;
                found[id] = known.Finding;
            }
            else
            {
                missing.Add(id);
            }
        }

        if (missing.Count > 0)
        {
            foreach (var finding in await load(missing))
            {
                // Of two readers that loaded it at once one wins: whatever hangs on a finding is made once.
                found[finding.Id] = kept.GetOrAdd((@operator, finding.Id), new Kept(finding) { Round = now }).Finding;
            }

            Trim();
        }

        return [.. ids.Where(found.ContainsKey).Select(id => found[id])];
    }

    private void Trim()
    {
        if (kept.Count <= most || !trimming.TryEnter()) return;
        try
        {
            // A quarter at once, so that a full cache does not sort itself at every reading.
            foreach (var (key, _) in kept.OrderBy(k => k.Value.Round).Take(kept.Count - (most * 3 / 4)).ToList()) kept.TryRemove(key, out _);
        }
        finally
        {
            trimming.Exit();
        }
    }

    private sealed class Kept(StoredFinding finding)
    {
        public StoredFinding Finding { get; } = finding;

        public long Round { get; set; }
    }
}
