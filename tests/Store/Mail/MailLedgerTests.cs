using System.Text;
using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Schema;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>Where a message stands, and what is on record of it.</summary>
public sealed class MailLedgerTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => mail = await StoredMail.OpenAsync(postgres);

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task A_period_that_goes_out_anew_has_a_key_of_its_own_once()
    {
        var (reader, start) = (await mail.ReaderAsync("boss@bay.example"), mail.Time.GetUtcNow());
        Assert.Equal("2026-W48", (await IssuedAsync(reader.Digest)).NextEdition("2026-W48"));
        mail.Time.Advance(TimeSpan.FromDays(365));
        await mail.IssueAsync(reader);
        mail.Time.AdjustTime(start);

        // Two workers find that it is due anew; the slower one still writes it when the other has issued it.
        var (mine, others) = (await IssuedAsync(reader.Digest), await IssuedAsync(reader.Digest));
        Assert.Equal("2026-W48~2", others.NextEdition("2026-W48"));
        await mail.IssueAsync(reader, others.NextEdition("2026-W48"));
        Assert.False(await mail.Ledger.IssueAsync(mail.Card, reader.Digest, mine.NextEdition("2026-W48"), [], [], Ct));
        Assert.Equal("2026-W48~3", (await IssuedAsync(reader.Digest)).NextEdition("2026-W48"));
        Assert.Equal("2026-W48", (await IssuedAsync(reader.Digest, "north-pier")).NextEdition("2026-W48"));
        Assert.Equal(KeyValuePair.Create("2026-W48", start), Assert.Single((await IssuedAsync(reader.Digest)).At));
    }

    [Fact]
    public async Task A_message_is_planned_composed_attempted_and_accepted_and_the_record_holds_the_hash_of_its_bytes()
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        var claimed = await mail.ClaimAsync();
        await mail.Ledger.SentAsync(claimed, Ct, "2.0.0 Ok: queued as 4F1");
        Assert.Equal("planned composed attempted sent", await mail.StepsAsync(key));
        var steps = await mail.Reading.HistoryAsync(mail.Card.Id, key, Ct);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(claimed.Mime)), steps[1].Why);
        Assert.Equal("2.0.0 Ok: queued as 4F1", steps[3].Why);
        Assert.Equal((MailState.Sent, 1, mail.Time.GetUtcNow()), ((await mail.LineAsync(key)) is var l ? (l.State, l.Attempts, l.SettledAt!.Value) : default));
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
    }

    [Fact]
    public async Task The_schema_is_as_it_is_made() => Assert.Null(await SchemaSteps.DifferenceAsync(mail.Database.Source, Ct));

    [Fact]
    public async Task A_refusal_for_now_is_tried_again_for_48_hours_and_then_given_up()
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        var attempts = 0;
        while ((await mail.LineAsync(key)).State != MailState.GivenUp)
        {
            attempts++;
            await mail.Ledger.DeferredAsync(await mail.ClaimAsync(), "451 4.3.0 later", Ct);
            Assert.Null(await mail.Ledger.ClaimAsync(Ct));
            if ((await mail.LineAsync(key)).NextAt is { } next) mail.Time.SetUtcNow(next);
            Assert.True(attempts < 40);
        }

        Assert.InRange(attempts, 18, 28);
        Assert.Equal(new DateTimeOffset(2026, 12, 2, 7, 0, 0, TimeSpan.Zero), mail.Time.GetUtcNow());
        Assert.EndsWith("attempted deferred given_up", await mail.StepsAsync(key), StringComparison.Ordinal);
        mail.Time.Advance(TimeSpan.FromDays(3));
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
    }

    [Fact]
    public async Task An_attempt_without_a_clear_answer_is_repeated_three_times_at_most_and_stays_listed()
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        for (var i = 0; i < MailState.MostUnclearAttempts; i++)
        {
            await mail.Ledger.UnclearAsync(await mail.ClaimAsync(), "cut after DATA", Ct);
            mail.Time.Advance(TimeSpan.FromHours(1));
        }

        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        var line = await mail.LineAsync(key);
        Assert.Equal((MailState.GivenUp, 3, 3), (line.State, line.Attempts, line.Unclear));
        Assert.Equal([key], (await mail.Reading.ListAsync(mail.Card.Id, new MailFilter(Unclear: true), null, 10, Ct)).Select(l => l.Message));
    }

    [Fact]
    public async Task A_refusal_that_is_about_the_address_marks_all_its_subscriptions_and_later_issues_leave_it_out_and_say_so()
    {
        var wear = await mail.ReaderAsync("gone@bay.example");
        var due = await mail.ReaderAsync("gone@bay.example", DigestNames.DueList, "north-pier");
        var other = await mail.ReaderAsync("boss@bay.example");
        var key = await mail.IssueAsync(wear);
        await mail.Ledger.RefusedAsync(await mail.ClaimAsync(), "550 5.1.1 (address): no such user", Ct, aboutAddress: true);

        Assert.Equal([other.Id], (await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct)).Select(r => r.Id));
        Assert.Empty(await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.DueList, Ct));
        Assert.Equal(1, await mail.Operators.NoMailAsync(mail.Card.Id, Ct));
        Assert.Equal([wear.Id, due.Id], (await mail.ToldAsync()).OfType<RecipientTakesNoMail>().Where(t => t.Message == key).Select(t => t.Recipient).OrderBy(r => r == due.Id));

        await mail.IssueAsync(other, "2026-W49");
        var left = Assert.Single((await mail.ToldAsync()).OfType<RecipientLeftOut>());
        Assert.Equal((wear.Id, "2026-W49"), (left.Recipient, left.Period));

        Assert.True(await mail.Operators.TryAgainAsync(mail.Card, "gone@bay.example", "admin-1", Ct));
        Assert.False(await mail.Operators.TryAgainAsync(mail.Card, "gone@bay.example", "admin-1", Ct));
        Assert.Equal(2, (await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct)).Count);
        Assert.All((await mail.ToldAsync()).OfType<RecipientTriedAgain>(), t => Assert.Equal("admin-1", t.Entry.By));
    }

    [Fact]
    public async Task A_refusal_of_the_message_itself_marks_nobody()
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        await mail.Ledger.RefusedAsync(await mail.ClaimAsync(), "552 5.3.4 too big", Ct);
        Assert.Equal(MailState.Refused, (await mail.LineAsync(key)).State);
        Assert.Single(await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct));
        Assert.Equal(1, await mail.Ledger.RefusedSinceAsync(mail.Time.GetUtcNow().AddDays(-7), Ct));
    }

    [Fact]
    public async Task Who_leaves_gets_nothing_that_waits_and_the_message_says_why()
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        var key = await mail.IssueAsync(reader);
        Assert.True(await mail.Operators.UnsubscribeAsync(reader.Token, Ct));
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        Assert.Equal("planned composed unsubscribed", await mail.StepsAsync(key));
        var line = await mail.LineAsync(key);
        Assert.Equal((MailState.Unsubscribed, false), (line.State, line.Kept));
        Assert.Equal(0, await mail.Ledger.RefusedSinceAsync(mail.Time.GetUtcNow().AddDays(-7), Ct));
    }

    [Fact]
    public async Task The_text_of_a_message_is_kept_for_a_month_and_forgotten_with_its_reader_at_once()
    {
        var (reader, other) = (await mail.ReaderAsync("boss@bay.example"), await mail.ReaderAsync("mech@bay.example"));
        var (key, forgotten) = (await mail.IssueAsync(reader), await mail.IssueAsync(other, "2026-W49"));
        for (var i = 0; i < 2; i++) await mail.Ledger.SentAsync(await mail.ClaimAsync(), Ct);
        await mail.Operators.UnsubscribeAddressAsync(mail.Card, other.Address, forget: true, Ct);
        Assert.Empty(await mail.Reading.MimeAsync(mail.Card.Id, forgotten, Ct));

        mail.Time.Advance(TimeSpan.FromDays(29));
        Assert.Equal(0, await mail.Ledger.ForgetSettledAsync(Ct));
        Assert.Contains("hello", Encoding.UTF8.GetString(await mail.Reading.MimeAsync(mail.Card.Id, key, Ct)), StringComparison.Ordinal);
        mail.Time.Advance(TimeSpan.FromDays(1));
        Assert.Equal(1, await mail.Ledger.ForgetSettledAsync(Ct));
        Assert.False((await mail.LineAsync(key)).Kept);
    }

    [Fact]
    public async Task Nothing_is_claimed_to_a_host_that_asked_to_be_left_alone_and_alerts_come_before_digests()
    {
        var slow = await mail.IssueAsync(await mail.ReaderAsync("boss@slow.example"), host: "slow.example");
        mail.Time.Advance(TimeSpan.FromMinutes(1));
        var quick = await mail.IssueAsync(await mail.ReaderAsync("boss@quick.example"), "2026-W49", "quick.example");
        mail.Time.Advance(TimeSpan.FromMinutes(1));
        var alert = await mail.IssueAsync(await mail.ReaderAsync("boss@slow.example", DigestNames.Alert), "2026-11-30T07:02Z/1", "slow.example");
        Assert.Equal(quick, (await mail.Ledger.ClaimAsync(["slow.example"], Ct))!.Message);
        Assert.Null(await mail.Ledger.ClaimAsync(["slow.example"], Ct));
        Assert.Equal(alert, (await mail.ClaimAsync()).Message);
        Assert.Equal(slow, (await mail.ClaimAsync()).Message);
    }

    [Fact]
    public async Task Lists_are_newest_first_and_go_on_where_the_page_before_ended()
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        foreach (var week in Enumerable.Range(1, 7))
        {
            await mail.IssueAsync(reader, $"2026-W{week:00}");
            if (week % 2 == 0) mail.Time.Advance(TimeSpan.FromHours(1)); // else of one instant
        }

        var seen = new List<string>();
        (DateTimeOffset, string)? after = null;
        while (await mail.Reading.ListAsync(mail.Card.Id, new MailFilter(), after, 2, Ct) is { Count: > 0 } page)
        {
            seen.AddRange(page.Select(l => l.Period!));
            after = (page[^1].IssuedAt, page[^1].Message);
        }

        Assert.Equal(["2026-W07", "2026-W05", "2026-W06", "2026-W03", "2026-W04", "2026-W01", "2026-W02"], seen);
    }

    private Task<IssuedPeriods> IssuedAsync(string digest, string? dock = null) => mail.Ledger.IssuedAsync(mail.Card.Id, digest, dock, Ct);
}
