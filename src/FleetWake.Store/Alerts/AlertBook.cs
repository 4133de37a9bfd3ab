using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Logbook.People;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using JasperFx;
using Marten;
using Npgsql;

namespace FleetWake.Store.Alerts;

/// <summary>
/// What was told of by alert, and since when the rest waits. A cause is told once to the readers of a dock, and once to those of the whole
/// fleet, whatever ticks, nodes and restarts do: its key is unique, and is written in the transaction that queues the messages.
/// </summary>
public sealed class AlertBook(IDocumentStore store, NpgsqlDataSource source, AlertHooks hooks, TimeProvider time)
{
    /// <summary>Stands for the beginning, and for each new one after a pause: causes of before are in the weekly digest.</summary>
    private const string Begun = "";

    private const string See =
        "insert into " + WorkTables.AlertsSeen + " (operator, scope, cause, seen_at) select $1, $2, c, $4 from unnest($3::text[]) c on conflict do nothing";

    private const string Lift = "delete from " + WorkTables.AlertsSeen + " where operator = $1 and scope = $2 and cause <> '' and not (cause = any($3::text[]))";

    private const string Seen = "select cause, seen_at from " + WorkTables.AlertsSeen + " where operator = $1 and scope = $2";

    private const string Settle = "delete from " + WorkTables.AlertsSeen + " where operator = ? and scope = ? and cause = ?";

    private const string Begin = "insert into " + WorkTables.AlertsSeen + " (operator, scope, cause, seen_at) values (?, ?, '', ?) on conflict do nothing";

    // Whoever comes back, or switches alerts on again, begins anew; what was being gathered waits for that, but not for ever.
    private const string Pause = "delete from " + WorkTables.AlertsSeen + " where operator = $1 and not (scope = any($2::text[])) and (cause = '' or seen_at < $3)";

    /// <summary>What was seen while somebody read, and was not told yet, is told after a pause within so long: another reader takes over, and quiet hours last a night.</summary>
    private static readonly TimeSpan GatheredKept = TimeSpan.FromDays(2);

    /// <summary>
    /// Alerts go to the readers of these docks alone now: whoever comes later, or comes back, begins anew, and is not told what happened meanwhile;
    /// but what was being gathered when the last one went is, unless that is days ago.
    /// </summary>
    /// <param name="operator">The operator.</param>
    /// <param name="docks">The docks whose readers are told; null among them for those of the whole fleet.</param>
    /// <param name="ct">Ends it.</param>
    public Task OnlyAsync(string @operator, IEnumerable<string?> docks, CancellationToken ct) => Contention.SettleAsync(
        () => source.RunAsync(Pause, ct, @operator, docks.Select(d => d ?? "").ToArray(), time.GetUtcNow() - GatheredKept), ct);

    /// <summary>
    /// Of what stands now, what nobody was told of yet, each with since when it is seen. What no longer stands is forgotten as long as nobody
    /// was told of it. At the first look, and at the first one after a pause, what is older than it may be told is taken as told, unless it was being gathered: it is in the weekly digest.
    /// </summary>
    /// <param name="operator">The operator.</param>
    /// <param name="dock">The dock whose readers are meant; null for those of the whole fleet.</param>
    /// <param name="standing">Causes that stand now, each with whether it is fresh enough to be told at a first look.</param>
    /// <param name="ct">Ends it.</param>
    public Task<IReadOnlyDictionary<string, DateTimeOffset>> WaitingAsync(string @operator, string? dock, IReadOnlyDictionary<string, bool> standing, CancellationToken ct) =>
        Contention.SettleAsync(() => WaitingOnceAsync(@operator, dock, standing, ct), ct);

    // Ticks of several nodes insert and delete the same rows, and the database may end one of two that wait for each other.
    private async Task<IReadOnlyDictionary<string, DateTimeOffset>> WaitingOnceAsync(
        string @operator, string? dock, IReadOnlyDictionary<string, bool> standing, CancellationToken ct)
    {
        var (scope, now) = (dock ?? "", time.GetUtcNow());
        var seen = await ReadAsync(@operator, scope, ct);
        if (!seen.ContainsKey(Begun))
        {
            if (!await BeginAsync(@operator, scope, [.. standing.Where(s => !s.Value && !Gathered(s.Key)).Select(s => s.Key)], now, ct)) return new Dictionary<string, DateTimeOffset>();
            seen = await ReadAsync(@operator, scope, ct);
        }

        await using var session = store.QuerySession(@operator);
        var ids = standing.Keys.Select(c => ToldCause.IdOf(scope, c)).ToArray();
        var told = (await session.LoadManyAsync<ToldCause>(ct, ids)).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        var waiting = standing.Keys.Where(c => !told.Contains(ToldCause.IdOf(scope, c))).ToArray();
        if (waiting.Any(c => !seen.ContainsKey(c))) await source.RunAsync(See, ct, @operator, scope, waiting, now);
        if (seen.Keys.Any(c => c.Length > 0 && !waiting.Contains(c, StringComparer.Ordinal))) await source.RunAsync(Lift, ct, @operator, scope, waiting);

        // A clock that ran ahead may have seen it in the future: since now, then, for no wait may be longer than it is meant to be.
        return waiting.ToDictionary(c => c, c => seen.TryGetValue(c, out var at) && at <= now ? at : now, StringComparer.Ordinal);

        bool Gathered(string cause) => seen.TryGetValue(cause, out var at) && (now - at).Duration() <= GatheredKept;
    }

    /// <summary>Tells of causes: their messages and the note that they were told, in one transaction. False when another node did so meanwhile; nothing is queued then.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="dock">The dock whose readers it is for; null for those of the whole fleet.</param>
    /// <param name="period">Key of the alert.</param>
    /// <param name="mails">Its messages.</param>
    /// <param name="causes">What it tells of.</param>
    /// <param name="hooked">What is handed to the operator's own program, where it has set an address; null for nothing.</param>
    /// <param name="ct">Ends it.</param>
    /// <param name="unwritten">Pseudonymous ids of readers to whom no message could be written.</param>
    public Task<bool> TellAsync(
        OperatorCard @operator, string? dock, string period, IReadOnlyList<NewMail> mails, IReadOnlyCollection<string> causes, string? hooked, CancellationToken ct,
        IReadOnlyList<string>? unwritten = null) =>
        Contention.SettleAsync(() => TellOnceAsync(@operator, dock, period, mails, causes, hooked, unwritten, ct), ct);

    private async Task<bool> TellOnceAsync(
        OperatorCard @operator, string? dock, string period, IReadOnlyList<NewMail> mails, IReadOnlyCollection<string> causes, string? hooked, IReadOnlyList<string>? unwritten,
        CancellationToken ct)
    {
        var (scope, now) = (dock ?? "", time.GetUtcNow());
        await using var session = store.LightweightSession(@operator.Id);
        mails = await MailLedger.StillWantedAsync(session, mails, ct);
        await MailLedger.LeaveOutAsync(session, @operator, DigestNames.Alert, period, dock, unwritten ?? [], now, ct);
        session.Insert(new IssuedDigest(MailLedger.Key(DigestNames.Alert, dock, period), now, mails.Count));
        session.Events.Append(StreamName.Operator, new DigestIssued(ProgramEntry.At(now, @operator.Zone), DigestNames.Alert, period, [.. mails.Select(m => m.Message)]) { Dock = dock });
        foreach (var cause in causes)
        {
            session.Insert(new ToldCause(ToldCause.IdOf(scope, cause), period, now));
            session.QueueSqlCommand(Settle, @operator.Id, scope, cause);
        }

        foreach (var mail in mails) MailLedger.Add(session, @operator, DigestNames.Alert, period, mail, now);
        if (hooked is not null) hooks.Queue(session, @operator.Id, period, hooked);
        return await SaveAsync(session, ct);
    }

    /// <summary>Whether an operator has alerts handed to a program of its own.</summary>
    public async Task<bool> IsHookedAsync(string @operator, CancellationToken ct) => await hooks.FindAsync(@operator, ct) is not null;

    private async Task<bool> BeginAsync(string @operator, string scope, IReadOnlyList<string> before, DateTimeOffset now, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator);
        var told = (await session.LoadManyAsync<ToldCause>(ct, [.. before.Select(c => ToldCause.IdOf(scope, c))])).Select(t => t.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var id in before.Select(c => ToldCause.IdOf(scope, c)).Except(told)) session.Insert(new ToldCause(id, ToldCause.Before, now));
        session.QueueSqlCommand(Begin, @operator, scope, now);
        return await SaveAsync(session, ct);
    }

    private static async Task<bool> SaveAsync(IDocumentSession session, CancellationToken ct)
    {
        try
        {
            await session.SaveChangesAsync(ct);
            return true;
        }
        catch (DocumentAlreadyExistsException)
        {
            return false;
        }
    }

    private async Task<Dictionary<string, DateTimeOffset>> ReadAsync(string @operator, string scope, CancellationToken ct) =>
        (await source.ReadAsync(Seen, r => (Cause: r.GetString(0), At: r.Moment(1)), ct, @operator, scope)).ToDictionary(s => s.Cause, s => s.At, StringComparer.Ordinal);
}

/// <summary>The one proof that a cause was told; its id is unique per operator.</summary>
/// <param name="Id">Whose readers, and the cause.</param>
/// <param name="Alert">Key of the alert that told it; <c>before</c> for what stood when alerts began.</param>
/// <param name="ToldAt">When.</param>
public sealed record ToldCause(string Id, string Alert, DateTimeOffset ToldAt)
{
    internal const string Before = "before";

    internal static string IdOf(string scope, string cause) => $"{scope}/{cause}";
}
