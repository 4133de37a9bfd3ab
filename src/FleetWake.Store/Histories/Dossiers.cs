using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using Marten;

namespace FleetWake.Store.Histories;

/// <summary>Gathers the logs that bear on one boat, straight from the streams: a view may lag, a finding must not.</summary>
internal static class Dossiers
{
    /// <summary>The dossier of a boat, in at most five round trips.</summary>
    public static async Task<Dossier> LoadAsync(IQuerySession session, string boat, CancellationToken ct)
    {
        var stream = StreamName.Boat(boat);
        return (await AroundAsync(session, (await LogsAsync(session, [stream], ct))[stream], [], ct)).After;
    }

    /// <summary>A boat's dossier before and after some facts, which may bring an engine or a prop that it never had.</summary>
    public static async Task<(Dossier Before, Dossier After)> AroundAsync(IQuerySession session, FactLog own, IReadOnlyList<Placed> facts, CancellationToken ct)
    {
        var then = facts.Where(f => f.Stream == own.Id).Aggregate(own, (log, f) => log.Evolve(f.Fact));
        var logs = new Dictionary<string, FactLog>(StringComparer.Ordinal) { [own.Id] = own };
        await ReachAsync(logs, PartsNamed(then), missing => LogsAsync(session, missing, ct));
        var before = Dossier.Gather(own, then, s => logs[s]);
        return (before, before.With(facts));
    }

    /// <summary>
    /// Dossiers of some boats out of the logs as the daemon folded them, in five queries however many boats there are.
    /// They may lag a moment behind the streams: good for reading, and not for findings.
    /// </summary>
    public static async Task<IReadOnlyList<Dossier>> FoldedAsync(IQuerySession session, IReadOnlyList<string> boats, CancellationToken ct)
    {
        var logs = await FoldedLogsAsync(session, boats.Select(StreamName.Boat), ct);
        var own = boats.Select(b => logs[StreamName.Boat(b)]).ToList();
        await ReachAsync(logs, own.SelectMany(PartsNamed), missing => FoldedLogsAsync(session, missing, ct));
        return [.. own.Select(log => Dossier.Gather(log, s => logs[s]))];
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

    /// <summary>Adds the logs of engines and props, of boats that they were on, of engines of those, and of boats that these were on.</summary>
    private static async Task ReachAsync(Dictionary<string, FactLog> logs, IEnumerable<string> parts, Func<string[], Task<Dictionary<string, FactLog>>> load)
    {
        var boats = await AddAsync(parts, Dossier.BoatsNamed, StreamName.Boat);
        var engines = await AddAsync(boats, Dossier.EnginesNamed, StreamName.Engine);
        await AddAsync(await AddAsync(engines, Dossier.BoatsNamed, StreamName.Boat), _ => [], s => s);

        async Task<List<string>> AddAsync(IEnumerable<string> streams, Func<FactLog, IEnumerable<string>> named, Func<string, string> stream)
        {
            var all = streams.Distinct(StringComparer.Ordinal).ToList();
            foreach (var (id, log) in await load([.. all.Where(s => !logs.ContainsKey(s))])) logs[id] = log;
            return [.. all.SelectMany(s => named(logs[s])).Select(stream)];
        }
    }

    private static IEnumerable<string> PartsNamed(FactLog boat) =>
        Dossier.EnginesNamed(boat).Select(StreamName.Engine).Concat(Dossier.PropsNamed(boat).Select(StreamName.Prop));
}
