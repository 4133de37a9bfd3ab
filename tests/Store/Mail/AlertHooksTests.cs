using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>Alerts that wait to be handed to an operator's address.</summary>
public sealed class AlertHooksTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;
    private AlertHooks hooks = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        mail = await StoredMail.OpenAsync(postgres);
        hooks = new AlertHooks(mail.Database.Store, mail.Database.Source, mail.Time);
    }

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task Nothing_is_queued_until_an_address_is_set_and_what_is_queued_twice_goes_once()
    {
        await QueueAsync("a-1");
        Assert.Null(await hooks.ClaimAsync(Ct));
        var secret = await hooks.SetAsync(mail.Card, new Uri("https://hook.example/alerts?key=k"), "admin-1", Ct);
        await QueueAsync("a-1");
        await QueueAsync("a-1");
        var claimed = await hooks.ClaimAsync(Ct);
        Assert.Equal(("a-1", 1, "{}", "https://hook.example/alerts?key=k", secret), (claimed!.Alert, claimed.Attempt, claimed.Json, claimed.Address, claimed.Secret));
        Assert.Null(await hooks.ClaimAsync(Ct));
        await hooks.SentAsync(claimed, Ct);
        Assert.Equal(new HandedAlert("a-1", MailState.Sent, 1, null, mail.Time.GetUtcNow(), null), Assert.Single(await hooks.ListAsync(mail.Card.Id, 10, Ct)));

        // The record names the host and who set it, not the rest.
        var set = Assert.Single((await mail.ToldAsync()).OfType<AlertHookSet>());
        Assert.Equal(("hook.example", "admin-1"), (set.Host, set.Entry.By));
    }

    [Fact]
    public async Task What_breaks_every_worker_is_given_up_in_its_time_and_what_a_clock_ahead_put_off_goes_at_once()
    {
        await hooks.SetAsync(mail.Card, new Uri("https://hook.example/"), null, Ct);
        await QueueAsync("breaks");
        Assert.NotNull(await hooks.ClaimAsync(Ct));
        mail.Time.Advance(MailState.TriedFor + TimeSpan.FromMinutes(3));
        Assert.Null(await hooks.ClaimAsync(Ct));
        Assert.Equal(MailState.GivenUp, Assert.Single(await hooks.ListAsync(mail.Card.Id, 10, Ct)).State);

        await QueueAsync("ahead");
        await using (var ahead = mail.Database.Source.CreateCommand("update fleetwake.outgoing_hooks set not_before = not_before + interval '360 days' where alert = 'ahead'")) await ahead.ExecuteNonQueryAsync(Ct);
        Assert.Equal("ahead", (await hooks.ClaimAsync(Ct))?.Alert);
    }

    [Fact]
    public async Task What_was_not_taken_is_tried_for_48_hours_and_what_a_dead_worker_had_is_tried_again()
    {
        await hooks.SetAsync(mail.Card, new Uri("https://hook.example/"), null, Ct);
        await QueueAsync("a-1");
        await hooks.ClaimAsync(Ct); // and dies
        mail.Time.Advance(TimeSpan.FromMinutes(2));
        var again = await hooks.ClaimAsync(Ct);
        Assert.Equal(2, again!.Attempt);
        await hooks.DeferredAsync(again, "503", Ct);
        Assert.Null(await hooks.ClaimAsync(Ct));
        var attempts = 2;
        for (; attempts < 60; attempts++)
        {
            mail.Time.Advance(TimeSpan.FromHours(5));
            if (await hooks.ClaimAsync(Ct) is not { } next) break;
            await hooks.DeferredAsync(next, "503", Ct);
        }

        Assert.InRange(attempts, 8, 14);
        Assert.Equal(MailState.GivenUp, Assert.Single(await hooks.ListAsync(mail.Card.Id, 10, Ct)).State);
    }

    [Fact]
    public async Task What_waits_when_the_address_is_taken_away_goes_nowhere()
    {
        await hooks.SetAsync(mail.Card, new Uri("https://hook.example/"), null, Ct);
        await QueueAsync("a-1");
        Assert.True(await hooks.EndAsync(mail.Card, "admin-1", Ct));
        Assert.False(await hooks.EndAsync(mail.Card, "admin-1", Ct));
        Assert.Null(await hooks.ClaimAsync(Ct));
        Assert.Equal(MailState.GivenUp, Assert.Single(await hooks.ListAsync(mail.Card.Id, 10, Ct)).State);
    }

    private async Task QueueAsync(string alert)
    {
        await using var session = mail.Database.Store.LightweightSession(mail.Card.Id);
        hooks.Queue(session, mail.Card.Id, alert, "{}");
        await session.SaveChangesAsync(Ct);
    }
}
