using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Store.Records;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Quarantine;

/// <summary>Entries of revoked phones: kept as they came, until a person lets them through or leaves them out. Nothing is thrown away.</summary>
public sealed class QuarantineBook(NpgsqlDataSource source, Recorder recorder, TimeProvider time)
{
    /// <summary>Entries of an operator that may wait at once: a stolen phone must not fill the database.</summary>
    public const int MostWaiting = 5_000;

    /// <summary>Characters of one entry: a trial of many runs has a tenth of it.</summary>
    public const int MostCharacters = 65_536;

    private const string Columns = "entry, kind, raw, device, received_at, sent_at, state, decided_at, decided_by, refusal, release_entry";

    private const string Keep =
        "insert into " + DockTables.KeptEntries + " (operator, entry, kind, raw, hash, device, received_at, sent_at, state, release_entry)"
        + " select $1, $2, $3, $4, $5, $6, $7, $8::timestamptz, 'waiting', $9"
        + " where (select count(*) from " + DockTables.KeptEntries + " where operator = $1 and state = 'waiting') < $10 on conflict do nothing";

    /// <summary>Keeps an entry back, and answers the phone that it may let go of it. The same entry again is answered alike, another one of its id is a conflict.</summary>
    public async Task<Answer> KeepAsync(string @operator, RecordKind kind, ICommand command, string raw, Arrival arrival, CancellationToken ct)
    {
        if (await recorder.RecallAsync(@operator, kind, command, arrival, ct) is { } again) return again;
        var id = command.Entry!.Id!.Value;
        if (raw.Length > MostCharacters) return Refused(id, new Refusal("", "too_large", "this record is too large to be kept back: keep it on the phone, and show it to the office"));

        // Its text, not what it means: whether a rule refuses it hangs on the day, and what is refused may hold what JSON cannot write.
        var hash = Operators.KeySecret.Hash(raw);
        var kept = await source.RunAsync(
            Keep, ct, @operator, id, kind.Name, raw, hash, arrival.Device, arrival.ReceivedAt, arrival.SentAt, Guid.CreateVersion7(arrival.ReceivedAt), MostWaiting);
        if (kept > 0) return new Answer(id, Outcome.KeptBack, false, [], [], []);
        var known = (await source.ReadAsync("select hash from " + DockTables.KeptEntries + " where operator = $1 and entry = $2", r => r.GetString(0), ct, @operator, id)).FirstOrDefault();
        return known is null ? Refused(id, new Refusal("", "quarantine_full", $"{MostWaiting} entries of revoked phones wait already: keep this one on the phone, and show it to the office"))
            : known == hash ? new Answer(id, Outcome.KeptBack, true, [], [], [])
            : Receipt.Conflict(id);
    }

    /// <summary>Entries that were kept back: those that wait first, and of each the newest.</summary>
    public Task<IReadOnlyList<KeptEntry>> OfAsync(string @operator, int most, CancellationToken ct) => ReadAsync(
        "select " + Columns + " from " + DockTables.KeptEntries + " where operator = $1 order by state <> 'waiting', received_at desc, entry limit $2", ct, @operator, most);

    /// <summary>What became of some entries, by entry; those that were never kept back are left out.</summary>
    public async Task<IReadOnlyDictionary<Guid, KeptState>> StatesAsync(string @operator, IReadOnlyCollection<Guid> entries, CancellationToken ct) =>
        (await ReadAsync("select " + Columns + " from " + DockTables.KeptEntries + " where operator = $1 and entry = any($2)", ct, @operator, entries.Distinct().ToArray()))
        .ToDictionary(k => k.Entry, k => k.State);

    /// <summary>How many wait.</summary>
    public async Task<int> WaitingAsync(string @operator, CancellationToken ct) =>
        (await source.ReadAsync("select count(*)::int from " + DockTables.KeptEntries + " where operator = $1 and state = 'waiting'", r => r.GetInt32(0), ct, @operator))[0];

    /// <summary>
    /// Lets an entry through, by the way and with the clock that it came with, and records that somebody did; null when there is
    /// none. One that is refused stays, with why.
    /// </summary>
    /// <param name="operator">The operator.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="by">The stamp of who does, without an id.</param>
    /// <param name="ct">Ends the work.</param>
    public async Task<Answer?> ReleaseAsync(string @operator, Guid entry, Stamp by, CancellationToken ct)
    {
        if ((await ReadAsync("select " + Columns + " from " + DockTables.KeptEntries + " where operator = $1 and entry = $2", ct, @operator, entry)).FirstOrDefault() is not { } kept) return null;
        var kind = RecordKind.Find(kept.Kind)!;
        var (command, refusals) = RecordReading.Read(kind, JsonNode.Parse(kept.Raw));
        var answer = command is null ? Refused(entry, [.. refusals]) : await recorder.TakeAsync(@operator, kind, command, kept.Arrival, ct);
        if (answer.Outcome is Outcome.Refused or Outcome.Conflict)
        {
            await source.RunAsync(
                "update " + DockTables.KeptEntries + " set refusal = $3 where operator = $1 and entry = $2", ct, @operator, entry, string.Join(" ", answer.Refusals.Select(r => $"{r.Field.TrimStart('/')}: {r.Message}.")));
            return answer;
        }

        // Its id was made when the entry was kept, so that a second pair of hands changes nothing.
        var release = new ReleaseQuarantinedEntry(by with { Id = kept.ReleaseEntry }, entry);
        await recorder.TakeAsync(@operator, RecordKind.Find(ReleaseQuarantinedEntry.Kind)!, release, Arrival.AtOffice(time.GetUtcNow()), ct);
        await DecideAsync(@operator, entry, KeptState.Released, by.By!, ct);
        return answer;
    }

    /// <summary>Leaves an entry out; false when there is none that could be.</summary>
    public Task<bool> LeaveOutAsync(string @operator, Guid entry, string by, CancellationToken ct) => DecideAsync(@operator, entry, KeptState.LeftOut, by, ct);

    // What was let through counts, and is no more to be left out here: it is retracted like any record.
    private async Task<bool> DecideAsync(string @operator, Guid entry, KeptState state, string by, CancellationToken ct) => await source.RunAsync(
        "update " + DockTables.KeptEntries + " set state = $3, decided_at = $4, decided_by = $5, refusal = null where operator = $1 and entry = $2 and state <> 'released'",
        ct, @operator, entry, Words.Of(state), time.GetUtcNow(), by) > 0;

    private static Answer Refused(Guid id, params Refusal[] refusals) => new(id, Outcome.Refused, false, [], [], refusals);

    private Task<IReadOnlyList<KeptEntry>> ReadAsync(string sql, CancellationToken ct, params object?[] values) => source.ReadAsync(
        sql,
        r => new KeptEntry(
            r.GetGuid(0), r.GetString(1), r.GetString(2), r.GetString(3), r.Moment(4), r.MaybeMoment(5), Words.TryRead<KeptState>(r.GetString(6), out var state) ? state : KeptState.Waiting,
            r.MaybeMoment(7), r.Text(8), r.Text(9), r.GetGuid(10)),
        ct, values);
}
