using FleetWake.Store.Schema;
using Marten;

namespace FleetWake.Store.Mail;

/// <summary>
/// Keeps all mail in, of every operator: after a database was restored from a backup, until somebody has seen that the record is whole again. While it
/// is kept in nothing is issued, told or sent, by whichever process.
/// </summary>
public sealed class MailHolds(IDocumentStore store, TimeProvider time)
{
    /// <summary>True in SQL while mail is kept in.</summary>
    internal const string Held = "exists (select from " + FleetStore.SchemaName + ".mt_doc_mail_hold)";

    // While mail was kept in nothing could be tried, and after a restore its time was over before it began.
    private const string MoreTime = " set until_at = ? where until_at < ? and state in ('queued', 'sending', 'deferred', 'unclear')";

    /// <summary>Since when mail is kept in; null when it goes out.</summary>
    public async Task<DateTimeOffset?> SinceAsync(CancellationToken ct)
    {
        await using var session = store.QuerySession();
        return (await session.LoadAsync<MailHold>(MailHold.TheOne, ct))?.Since;
    }

    /// <summary>Keeps mail in from now on. What is under way at this moment is past recall.</summary>
    public async Task HoldAsync(CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        if (await session.LoadAsync<MailHold>(MailHold.TheOne, ct) is not null) return;
        session.Store(new MailHold(MailHold.TheOne, time.GetUtcNow()));
        await session.SaveChangesAsync(ct);
    }

    /// <summary>Lets mail go out again, and has what waits be tried for 48 hours from now, alerts to an address as well; false when it was not kept in.</summary>
    public async Task<bool> ReleaseAsync(CancellationToken ct)
    {
        await using var session = store.LightweightSession();
        if (await session.LoadAsync<MailHold>(MailHold.TheOne, ct) is null) return false;
        session.Delete<MailHold>(MailHold.TheOne);
        var until = time.GetUtcNow() + MailState.TriedFor;
        session.QueueSqlCommand("update " + WorkTables.OutgoingMail + MoreTime, until, until);
        session.QueueSqlCommand("update " + WorkTables.OutgoingHooks + MoreTime, until, until);
        await session.SaveChangesAsync(ct);
        return true;
    }
}

/// <summary>Mail is kept in.</summary>
/// <param name="Id">Always the same: there is one of it at the most.</param>
/// <param name="Since">Since when.</param>
public sealed record MailHold(string Id, DateTimeOffset Since)
{
    internal const string TheOne = "all";
}
