using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>Reports of undeliverable mail: what they change, and what a forged one does not.</summary>
public sealed class MailBouncesTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;
    private MailBounces bounces = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        mail = await StoredMail.OpenAsync(postgres);
        bounces = new MailBounces(mail.Database.Store, mail.Database.Source, mail.Time);
    }

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task What_came_back_stands_so_marks_the_address_and_is_known_once()
    {
        var key = await SentAsync("boss@bay.example");
        Assert.Equal(BounceOutcome.Bounced, await bounces.TakeAsync(null, Failed(key, "5.1.1"), Ct));
        Assert.Equal(BounceOutcome.Repeat, await bounces.TakeAsync(null, Failed(key, "5.1.1"), Ct));
        Assert.Equal(MailState.Bounced, (await mail.LineAsync(key)).State);
        Assert.Equal("planned composed attempted sent bounced", await mail.StepsAsync(key));
        Assert.Empty(await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct));
    }

    [Fact]
    public async Task A_delay_is_noted_and_changes_nothing_and_a_flood_of_them_is_not_kept()
    {
        var key = await SentAsync("boss@bay.example");
        for (var i = 0; i < 50; i++) await bounces.TakeAsync(null, new BounceReport($"{key}@fleet.example", null, false, "4.4.1", "no answer"), Ct);
        Assert.Equal(MailState.Sent, (await mail.LineAsync(key)).State);
        Assert.Equal(5, (await mail.Reading.HistoryAsync(mail.Card.Id, key, Ct)).Count(s => s.Fact == "mail_delayed"));
        Assert.Single(await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct));
    }

    [Theory]
    [InlineData("5.7.1")]
    [InlineData("5.3.4")]
    [InlineData("4.4.7")]
    public async Task What_came_back_for_another_reason_leaves_the_address_alone(string status)
    {
        var key = await SentAsync("boss@bay.example");
        Assert.Equal(BounceOutcome.Bounced, await bounces.TakeAsync(null, Failed(key, status), Ct));
        Assert.Single(await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct));
    }

    [Fact]
    public async Task A_report_of_nothing_of_ours_or_of_anothers_message_changes_nothing()
    {
        var key = await SentAsync("boss@bay.example");
        Assert.Equal(BounceOutcome.Unknown, await bounces.TakeAsync(null, Failed("made-up", "5.1.1"), Ct));
        Assert.Equal(BounceOutcome.Unknown, await bounces.TakeAsync("another-fleet", Failed(key, "5.1.1"), Ct));
        Assert.Equal(BounceOutcome.Unknown, await bounces.TakeAsync(null, new BounceReport(null, "nobody@bay.example", true, "5.1.1", "no"), Ct));
        Assert.Equal(MailState.Sent, (await mail.LineAsync(key)).State);
    }

    [Fact]
    public async Task A_report_that_knows_the_address_alone_is_put_to_its_last_message_and_does_not_end_its_mail()
    {
        var key = await SentAsync("boss@bay.example");
        Assert.Equal(BounceOutcome.Bounced, await bounces.TakeAsync(null, new BounceReport(null, "boss@bay.example", true, "5.1.1", "no"), Ct));
        Assert.Equal(MailState.Bounced, (await mail.LineAsync(key)).State);
        Assert.Single(await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct));
    }

    [Theory]
    [InlineData("away@else.example", null, false, true)] // sent on by its reader, and gone there
    [InlineData(null, null, false, true)]
    [InlineData("BOSS@bay.example", null, false, false)]
    [InlineData("away@else.example", "boss@bay.example", false, false)]
    [InlineData("boss@bay.example", null, true, true)] // an answer holds as much
    public async Task Only_a_report_about_the_very_address_and_of_what_came_back_ends_its_mail(string? named, string? last, bool byReply, bool receives)
    {
        var key = await SentAsync("boss@bay.example");
        await bounces.TakeAsync(null, new BounceReport($"{key}@fleet.example", named, true, "5.1.1", "no such user") { LastRecipient = last, ByReply = byReply }, Ct);
        Assert.Equal(receives ? 1 : 0, (await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct)).Count);
    }

    private static BounceReport Failed(string key, string status) => new($"{key}@fleet.example", "boss@bay.example", true, status, "no such user");

    private async Task<string> SentAsync(string address)
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync(address));
        await mail.Ledger.SentAsync(await mail.ClaimAsync(), Ct);
        return key;
    }
}
