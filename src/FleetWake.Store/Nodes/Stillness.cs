namespace FleetWake.Store.Nodes;

/// <summary>
/// Which nodes have not beaten for long, by a clock that does not jump when the time of day is set: neither this
/// machine's nor the database's. So a beat is only compared with the one seen before.
/// </summary>
/// <param name="time">The clock.</param>
/// <param name="longest">A node whose beat stays the same for this long is silent.</param>
public sealed class Stillness(TimeProvider time, TimeSpan longest)
{
    private Dictionary<string, (DateTimeOffset Beat, long Seen)> known = new(StringComparer.Ordinal);

    /// <summary>Looks at the nodes' last beats; those that have stayed the same for too long.</summary>
    public IReadOnlyList<SilentNode> Of(IReadOnlyDictionary<string, DateTimeOffset> beats)
    {
        var now = time.GetTimestamp();
        known = beats.ToDictionary(
            b => b.Key, b => known.TryGetValue(b.Key, out var before) && before.Beat == b.Value ? before : (b.Value, now), StringComparer.Ordinal);
        return
        [
            .. known.Select(k => new SilentNode(k.Key, k.Value.Beat, time.GetElapsedTime(k.Value.Seen, now)))
                .Where(s => s.Since >= longest).OrderBy(s => s.Node, StringComparer.Ordinal),
        ];
    }
}

/// <summary>A node that has not beaten for long.</summary>
/// <param name="Node">Its id.</param>
/// <param name="Beat">Its last beat, by the database's clock.</param>
/// <param name="Since">For how long that has been its last one.</param>
public sealed record SilentNode(string Node, DateTimeOffset Beat, TimeSpan Since);
