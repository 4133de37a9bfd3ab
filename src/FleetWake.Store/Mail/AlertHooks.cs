using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>Alerts handed to an address of the operator's (a webhook): off until an administrator sets one.</summary>
public sealed class AlertHooks(IDocumentStore store, NpgsqlDataSource source, TimeProvider time)
{
    private static readonly TimeSpan Lease = TimeSpan.FromMinutes(2);

    // Only when a hook is set; an alert that is queued again is the same.
    private const string Add =
        "insert into " + WorkTables.OutgoingHooks + " (operator, alert, state, attempts, not_before, until_at, queued_at, body)"
        + " select ?, ?, 'queued', 0, ?, ?, ?, ? where exists (select 1 from " + FleetStore.SchemaName + ".mt_doc_alert_hook where id = ?) on conflict do nothing";

    // The claim is the note of the attempt: who dies in it has its alert sent again when the lease is over.
    private const string Claim =
        "update " + WorkTables.OutgoingHooks + " set state = 'sending', attempts = attempts + 1, not_before = $2 where (operator, alert) ="
        + " (select operator, alert from " + WorkTables.OutgoingHooks + " where state in ('queued', 'deferred', 'sending') and not " + MailHolds.Held
        // Written by a clock that ran ahead, for no wait is as long. Not while it is being sent: that one may run ahead still.
        + " and (not_before <= $1 or (state <> 'sending' and not_before > $3)) order by not_before for update skip locked limit 1)"
        + " returning operator, alert, attempts, until_at, body";

    private const string Settle =
        "update " + WorkTables.OutgoingHooks + " set state = $4, not_before = $5, last_error = $6, body = case when $4 = 'deferred' then body else '' end"
        + " where operator = $1 and alert = $2 and attempts = $3 and state = 'sending'";

    /// <summary>Sets the address that alerts are handed to, and makes the secret that signs them; it is shown this once.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="address">The address, https.</param>
    /// <param name="by">Pseudonymous id of the person; null at the command line.</param>
    /// <param name="ct">Ends the wait.</param>
    public async Task<string> SetAsync(OperatorCard @operator, Uri address, string? by, CancellationToken ct)
    {
        var secret = "fwh_" + KeySecret.MakeToken() + KeySecret.MakeToken();
        await using var session = store.LightweightSession(@operator.Id);
        session.Store(new AlertHook(@operator.Id, address.AbsoluteUri, secret));
        session.Events.Append(StreamName.Operator, new AlertHookSet(ProgramEntry.At(time.GetUtcNow(), @operator.Zone, by), address.Host));
        await session.SaveChangesAsync(ct);
        return secret;
    }

    /// <summary>Makes another secret for the address that is set; the one before signs nothing any more. Null when none is set.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="by">Pseudonymous id of the person.</param>
    /// <param name="ct">Ends the wait.</param>
    public async Task<string?> RenewAsync(OperatorCard @operator, string? by, CancellationToken ct) =>
        await FindAsync(@operator.Id, ct) is { } hook ? await SetAsync(@operator, new Uri(hook.Address), by, ct) : null;

    /// <summary>Hands alerts to no address any more; false when none was set.</summary>
    public async Task<bool> EndAsync(OperatorCard @operator, string? by, CancellationToken ct)
    {
        await using var session = store.LightweightSession(@operator.Id);
        if (await session.LoadAsync<AlertHook>(@operator.Id, ct) is null) return false;
        session.Delete<AlertHook>(@operator.Id);
        session.Events.Append(StreamName.Operator, new AlertHookEnded(ProgramEntry.At(time.GetUtcNow(), @operator.Zone, by)));
        await session.SaveChangesAsync(ct);
        return true;
    }

    /// <summary>The address of an operator; null when none is set.</summary>
    public async Task<AlertHook?> FindAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return await session.LoadAsync<AlertHook>(@operator, ct);
    }

    /// <summary>Queues an alert in a session that the caller saves, beside whatever else is to hold with it. Nothing is queued while no address is set.</summary>
    /// <param name="session">Session of the operator.</param>
    /// <param name="operator">The operator.</param>
    /// <param name="alertId">Id of the alert, unique per operator: queued twice, it is sent once.</param>
    /// <param name="json">What is sent.</param>
    public void Queue(IDocumentSession session, string @operator, string alertId, string json)
    {
        var now = time.GetUtcNow();
        session.QueueSqlCommand(Add, @operator, alertId, now, now + MailState.TriedFor, now, json, @operator);
    }

    /// <summary>Queues a test; false when no address is set.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="alertId">Its id, as <see cref="Queue"/> has it.</param>
    /// <param name="json">What is sent.</param>
    /// <param name="ct">Ends the wait.</param>
    public async Task<bool> TestAsync(OperatorCard @operator, string alertId, string json, CancellationToken ct)
    {
        if (await FindAsync(@operator.Id, ct) is null) return false;
        await using var session = store.LightweightSession(@operator.Id);
        Queue(session, @operator.Id, alertId, json);
        await session.SaveChangesAsync(ct);
        return true;
    }

    /// <summary>Claims an alert that is due; null when none is. What is queued for an operator that has ended its hook meanwhile is given up.</summary>
    public async Task<ClaimedHook?> ClaimAsync(CancellationToken ct)
    {
        while (true)
        {
            var now = time.GetUtcNow();
            var claimed = await source.ReadAsync(
                Claim, r => new ClaimedHook(r.GetString(0), r.GetString(1), r.GetInt32(2), r.Moment(3), r.GetString(4), "", ""), ct, now, now + Lease, now + MailState.BeyondAnyWait);
            if (claimed is not [var one]) return null;

            // Its last attempt falls on the end of its time: later than that, it broke every worker that tried, or nothing ran.
            if (now > one.Until + Lease)
            {
                await SettleAsync(one, MailState.GivenUp, now, "it was not handed over within its time", ct);
                continue;
            }

            if (await FindAsync(one.Operator, ct) is { } hook) return one with { Address = hook.Address, Secret = hook.Secret };
            await SettleAsync(one, MailState.GivenUp, now, "no address is set any more", ct);
        }
    }

    /// <summary>Records that the alert was taken.</summary>
    public Task SentAsync(ClaimedHook hook, CancellationToken ct) => SettleAsync(hook, MailState.Sent, time.GetUtcNow(), null, ct);

    /// <summary>Records that it was not; it is tried again with growing waits for 48 hours, then given up.</summary>
    public Task DeferredAsync(ClaimedHook hook, string why, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        return MailState.Next(hook.Alert, hook.Attempt, now, hook.Until) is { } next
            ? SettleAsync(hook, MailState.Deferred, next, why, ct)
            : SettleAsync(hook, MailState.GivenUp, now, why, ct);
    }

    /// <summary>Records that it is not worth another attempt.</summary>
    public Task RefusedAsync(ClaimedHook hook, string why, CancellationToken ct) => SettleAsync(hook, MailState.Refused, time.GetUtcNow(), why, ct);

    /// <summary>The last alerts of an operator, newest first.</summary>
    public Task<IReadOnlyList<HandedAlert>> ListAsync(string @operator, int most, CancellationToken ct) => source.ReadAsync(
        "select alert, state, attempts, last_error, coalesce(queued_at, until_at - interval '48 hours'), case when state in ('queued', 'deferred') then not_before end from " + WorkTables.OutgoingHooks
        + " where operator = $1 order by coalesce(queued_at, until_at - interval '48 hours') desc, alert limit $2",
        r => new HandedAlert(r.GetString(0), r.GetString(1), r.GetInt32(2), r.Text(3), r.Moment(4), r.MaybeMoment(5)), ct, @operator, most);

    private Task<int> SettleAsync(ClaimedHook hook, string state, DateTimeOffset notBefore, string? why, CancellationToken ct) =>
        source.RunAsync(Settle, ct, hook.Operator, hook.Alert, hook.Attempt, state, notBefore, why);
}

/// <summary>Where an operator's alerts are handed to.</summary>
/// <param name="Id">Id of the operator.</param>
/// <param name="Address">The address.</param>
/// <param name="Secret">The secret that signs; kept as it is, for a signature needs it.</param>
public sealed record AlertHook(string Id, string Address, string Secret)
{
    /// <summary>Without the secret, and of the address the host alone.</summary>
    public override string ToString() => new Uri(Address).Host;
}

/// <summary>An alert claimed for one attempt.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Alert">Id of the alert.</param>
/// <param name="Attempt">Number of the attempt, from 1.</param>
/// <param name="Until">Until when it is tried.</param>
/// <param name="Json">What is sent.</param>
/// <param name="Address">Where to.</param>
/// <param name="Secret">The secret that signs.</param>
public sealed record ClaimedHook(string Operator, string Alert, int Attempt, DateTimeOffset Until, string Json, string Address, string Secret)
{
    /// <summary>Without the secret.</summary>
    public override string ToString() => $"{Operator} {Alert} ({Attempt})";
}

/// <summary>What became of an alert that is handed to an address.</summary>
/// <param name="Alert">Id of the alert.</param>
/// <param name="State">Its state, a word of <see cref="MailState"/>.</param>
/// <param name="Attempts">How often it was tried.</param>
/// <param name="Why">What was said last; null when it was taken, or not tried yet.</param>
/// <param name="QueuedAt">When it was queued.</param>
/// <param name="NextAt">When it is tried next; null when it is under way or settled.</param>
public sealed record HandedAlert(string Alert, string State, int Attempts, string? Why, DateTimeOffset QueuedAt, DateTimeOffset? NextAt);
