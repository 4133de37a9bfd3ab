using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Store.Records;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.Histories;

/// <content>Logs as the daemon folded them, and what boats' histories tell.</content>
public sealed partial class FleetReading
{
    /// <summary>Every stream of an operator whose name begins so, in order.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="prefix">How the streams begin, e.g. <c>engine/</c>.</param>
    /// <param name="ct">Ends the reading.</param>
    public async Task<IReadOnlyList<string>> StreamsAsync(string @operator, string prefix, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        var streams = await session.Query<FactLog>().Where(l => l.Id.StartsWith(prefix)).Select(l => l.Id).ToListAsync(ct);
        return [.. streams.Order(StringComparer.Ordinal)];
    }

    /// <summary>Some logs, by stream; an empty one for a stream of which nothing has arrived.</summary>
    public async Task<IReadOnlyDictionary<string, FactLog>> LogsAsync(string @operator, IEnumerable<string> streams, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await Dossiers.FoldedLogsAsync(session, streams, ct);
    }

    /// <summary>The histories of some boats, in the order asked for.</summary>
    public async Task<IReadOnlyList<BoatHistory>> HistoriesAsync(string @operator, IReadOnlyList<string> boats, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return [.. (await Dossiers.FoldedAsync(session, boats, ct)).Select(BoatHistory.Tell)];
    }

    /// <summary>
    /// The log of a boat, an engine or a prop, with what of it counts when the logs beside it are settled along: a
    /// mounting may be corrected on the boat's log alone. Null when nothing of it has arrived.
    /// </summary>
    public async Task<(FactLog Log, Effective Counting)?> SettledLogAsync(string @operator, string stream, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        if (await session.LoadAsync<FactLog>(stream, ct) is not { } log) return null;
        var boats = StreamName.BoatOf(stream) is { } own ? [own] : Dossier.BoatsNamed(log).ToList();
        var dossiers = await Dossiers.FoldedAsync(session, boats, ct);
        return (log, Effective.Of(log, dossiers.SelectMany(d => d.Logs())));
    }

    /// <summary>Boats that an entry, or a prop that it names, has to do with: where to look for the mounting it began.</summary>
    public async Task<IReadOnlyList<string>> BoatsOfEntryAsync(string @operator, Guid entry, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        if (await session.LoadAsync<Receipt>(entry, ct) is not { } receipt) return [];
        var streams = receipt.References.Select(r => r.Stream).ToList();
        var props = await Dossiers.FoldedLogsAsync(session, streams.Where(s => StreamName.PropOf(s) is not null), ct);
        return [.. streams.Select(StreamName.BoatOf).OfType<string>().Concat(props.Values.SelectMany(Dossier.BoatsNamed)).Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Lives of some props, in the order asked for, those left out of which nothing has arrived.</summary>
    public async Task<IReadOnlyList<PropLife>> PropLivesAsync(string @operator, IReadOnlyCollection<string> props, CancellationToken ct)
    {
        var logs = (await LogsAsync(@operator, props.Select(StreamName.Prop), ct)).Values.Where(l => l.Facts.Count > 0).ToList();
        var boats = logs.ToDictionary(l => l.Id, l => Dossier.BoatsNamed(l).ToList(), StringComparer.Ordinal);
        var told = (await HistoriesAsync(@operator, [.. boats.Values.SelectMany(b => b).Distinct(StringComparer.Ordinal)], ct)).ToDictionary(h => h.Boat, StringComparer.Ordinal);
        return [.. logs.Select(l => PropLife.Of(l, [.. boats[l.Id].Select(b => told[b])]))];
    }

    /// <summary>Stock of some small parts, in the order asked for, those left out of which nothing has arrived.</summary>
    public async Task<IReadOnlyList<PartStock>> PartsAsync(string @operator, IReadOnlyCollection<string> parts, CancellationToken ct)
    {
        var logs = (await LogsAsync(@operator, parts.Select(StreamName.Part), ct)).Values.Where(l => l.Facts.Count > 0).ToList();
        var boats = await LogsAsync(@operator, logs.SelectMany(PartStock.BoatsNamed).Select(StreamName.Boat), ct);
        return [.. logs.Select(l => PartStock.Of(l, PartStock.BoatsNamed(l).Select(b => boats[StreamName.Boat(b)])))];
    }

    /// <summary>Streams of an operator that hold a fact of some name, whether or not it still counts.</summary>
    public async Task<IReadOnlyList<string>> StreamsWithAsync<TFact>(string @operator, CancellationToken ct)
        where TFact : IFact
    {
        await using var command = source.CreateCommand(
            "select distinct stream_id from " + FleetStore.SchemaName + ".mt_events where tenant_id = $1 and type = $2");
        command.Parameters.Add(new NpgsqlParameter { Value = @operator });
        command.Parameters.Add(new NpgsqlParameter { Value = LogbookJson.StoredNames[typeof(TFact)] });
        await using var reader = await command.ExecuteReaderAsync(ct);
        var streams = new List<string>();
        while (await reader.ReadAsync(ct)) streams.Add(reader.GetString(0));
        return streams;
    }
}
