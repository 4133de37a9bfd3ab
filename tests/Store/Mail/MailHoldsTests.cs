using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>Mail that was kept in for longer than a message is tried for, as after the restore of an old backup.</summary>
public sealed class MailHoldsTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;
    private MailHolds holds = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        mail = await StoredMail.OpenAsync(postgres);
        holds = new MailHolds(mail.Database.Store, mail.Time);
    }

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task What_was_kept_in_is_tried_for_48_hours_from_when_it_is_let_go()
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        await HeldAsync();
        await mail.Ledger.DeferredAsync(await mail.ClaimAsync(), "451 later", Ct);
        Assert.Equal(MailState.Deferred, (await mail.LineAsync(key)).State);
        mail.Time.Advance(MailState.TriedFor);
        await mail.Ledger.DeferredAsync(await mail.ClaimAsync(), "451 later", Ct);
        Assert.Equal(MailState.GivenUp, (await mail.LineAsync(key)).State);
    }

    [Fact]
    public async Task An_alert_to_an_address_that_was_kept_in_is_handed_over_and_says_when_it_was_queued()
    {
        var hooks = new AlertHooks(mail.Database.Store, mail.Database.Source, mail.Time);
        await hooks.SetAsync(mail.Card, new Uri("https://hook.example/"), null, Ct);
        var queued = mail.Time.GetUtcNow();
        Assert.True(await hooks.TestAsync(mail.Card, "a-1", "{}", Ct));
        await HeldAsync();
        var claimed = await hooks.ClaimAsync(Ct);
        await hooks.DeferredAsync(claimed!, "503", Ct);
        var line = Assert.Single(await hooks.ListAsync(mail.Card.Id, 10, Ct));
        Assert.Equal((MailState.Deferred, queued), (line.State, line.QueuedAt));
    }

    [Fact]
    public async Task What_has_more_time_than_that_or_is_settled_keeps_its_end()
    {
        await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        await mail.Ledger.SentAsync(await mail.ClaimAsync(), Ct);
        await mail.IssueAsync(await mail.ReaderAsync("dock@bay.example"), "2026-W49");
        await using (var longer = mail.Database.Source.CreateCommand("update fleetwake.outgoing_mail set until_at = until_at + interval '30 days' where state = 'queued'")) await longer.ExecuteNonQueryAsync(Ct);
        var before = await EndsAsync();
        await HeldAsync();
        Assert.Equal(2, before.Count);
        Assert.Equal(before, await EndsAsync());
    }

    private async Task HeldAsync()
    {
        await holds.HoldAsync(Ct);
        mail.Time.Advance(TimeSpan.FromDays(3));
        Assert.True(await holds.ReleaseAsync(Ct));
    }

    private async Task<List<DateTime>> EndsAsync()
    {
        await using var command = mail.Database.Source.CreateCommand("select until_at from fleetwake.outgoing_mail order by state");
        await using var reader = await command.ExecuteReaderAsync(Ct);
        var ends = new List<DateTime>();
        while (await reader.ReadAsync(Ct)) ends.Add(reader.GetDateTime(0));
        return ends;
    }
}
