using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using Marten;

namespace FleetWake.Store.Histories;

/// <summary>Gathers the logs that bear on one boat, straight from the streams: a view may lag, a finding must not.</summary>
internal static class Dossiers
{
    /// <summary>The dossier of a boat, in at most three round trips.</summary>
    public static async Task<Dossier> LoadAsync(IQuerySession session, string boat, CancellationToken ct)
    {
        var stream = StreamName.Boat(boat);
        return (await AroundAsync(session, (await LogsAsync(session, [stream], ct))[stream], [], ct)).After;
    }

    /// <summary>A boat's dossier before and after some facts, which may bring an engine or a prop that it never had.</summary>
    public static async Task<(Dossier Before, Dossier After)> AroundAsync(IQuerySession session, FactLog own, IReadOnlyList<Placed> facts, CancellationToken ct)
    {
        var boat = StreamName.BoatOf(own.Id);
        var then = facts.Where(f => f.Stream == own.Id).Aggregate(own, (log, f) => log.Evolve(f.Fact));
        var engines = Dossier.EnginesNamed(then).ToList();
        var props = Dossier.PropsNamed(then).ToList();
        var parts = await LogsAsync(session, [.. engines.Select(StreamName.Engine), .. props.Select(StreamName.Prop)], ct);
        var others = parts.Values.SelectMany(Dossier.BoatsNamed).Distinct(StringComparer.Ordinal).Where(b => b != boat);
        var neighbours = await LogsAsync(session, [.. others.Select(StreamName.Boat)], ct);
        var before = Dossier.Gather(own, engines, props, s => parts.TryGetValue(s, out var part) ? part : neighbours[s]);
        return (before, before.With(facts));
    }

    /// <summary>
    /// Dossiers of some boats out of the logs as the daemon folded them, in three queries however many boats there are.
    /// They may lag a moment behind the streams: good for reading, and not for findings.
    /// </summary>
    public static async Task<IReadOnlyList<Dossier>> FoldedAsync(IQuerySession session, IReadOnlyList<string> boats, CancellationToken ct)
    {
        var logs = await FoldedLogsAsync(session, boats.Select(StreamName.Boat), ct);
        var own = boats.Select(b => logs[StreamName.Boat(b)]).ToList();
        var parts = await FoldedLogsAsync(session, own.SelectMany(PartsNamed), ct);
        var others = await FoldedLogsAsync(session, parts.Values.SelectMany(Dossier.BoatsNamed).Select(StreamName.Boat).Where(s => !logs.ContainsKey(s)), ct);
        foreach (var (stream, log) in parts.Concat(others)) logs[stream] = log;
        return [.. own.Select(log => Dossier.Gather(log, Dossier.EnginesNamed(log), Dossier.PropsNamed(log), s => logs[s]))];
    }

    /// <summary>Some logs as the daemon folded them, an empty one for a stream that it has not seen.</summary>
    public static async Task<Dictionary<string, FactLog>> FoldedLogsAsync(IQuerySession session, IEnumerable<string> streams, CancellationToken ct)
    {
        var logs = streams.Distinct(StringComparer.Ordinal).ToDictionary(s => s, FactLog.Empty, StringComparer.Ordinal);
        if (logs.Count == 0) return logs;
        foreach (var log in await session.LoadManyAsync<FactLog>(ct, [.. logs.Keys])) logs[log.Id] = log;
        return logs;
    }

    /// <summary>The logs of some streams, an empty one for a stream that holds nothing.</summary>
    public static async Task<Dictionary<string, FactLog>> LogsAsync(IQuerySession session, string[] streams, CancellationToken ct)
    {
        var logs = streams.Distinct(StringComparer.Ordinal).ToDictionary(s => s, FactLog.Empty, StringComparer.Ordinal);
        if (logs.Count == 0) return logs;
        var events = await session.Events.QueryAllRawEvents()
            .Where(e => e.StreamKey!.IsOneOf(streams)).OrderBy(e => e.Sequence).ToListAsync(ct);
        foreach (var e in events)
        {
            if (e.Data is IFact fact) logs[e.StreamKey!] = logs[e.StreamKey!].Evolve(fact);
        }

        return logs;
    }

    private static IEnumerable<string> PartsNamed(FactLog boat) =>
        Dossier.EnginesNamed(boat).Select(StreamName.Engine).Concat(Dossier.PropsNamed(boat).Select(StreamName.Prop));
}
