using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>Who left, was forgotten or takes no mail is written to no more, whatever was under way.</summary>
public sealed class MailStopTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => mail = await StoredMail.OpenAsync(postgres);

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task Who_leaves_while_an_edition_is_written_gets_none_of_it()
    {
        var (left, stays) = (await mail.ReaderAsync("boss@bay.example"), await mail.ReaderAsync("mech@bay.example"));
        var mails = new[] { left, stays }.Select(r => new NewMail($"k-{r.Id}", r.Id, $"{r.Id}@fleet.example", "Subject: hello\r\n\r\nhello"u8.ToArray())).ToList();
        await mail.Operators.UnsubscribeAsync(left.Token, Ct);
        Assert.True(await mail.Ledger.IssueAsync(mail.Card, DigestNames.WeeklyWear, "2026-W48", mails, [], Ct));
        Assert.Equal([stays.Id], (await mail.Reading.ListAsync(mail.Card.Id, new MailFilter(), null, 10, Ct)).Select(l => l.Recipient));
        Assert.Equal([$"k-{stays.Id}"], Assert.Single((await mail.ToldAsync()).OfType<Logbook.People.DigestIssued>()).Messages);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Who_leaves_or_is_forgotten_while_an_attempt_is_under_way_is_not_written_to_once_more(bool forget)
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        var key = await mail.IssueAsync(reader);
        var claimed = await mail.ClaimAsync();
        await mail.Operators.UnsubscribeAddressAsync(mail.Card, reader.Address, forget, Ct);
        await mail.Ledger.DeferredAsync(claimed, "451 4.3.0 later", Ct);
        await AssertStoppedAsync(key, "planned composed attempted deferred unsubscribed");
    }

    [Fact]
    public async Task Who_is_forgotten_while_a_sender_dies_is_not_written_to_by_the_next()
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        var key = await mail.IssueAsync(reader);
        await mail.ClaimAsync();
        await mail.Operators.UnsubscribeAddressAsync(mail.Card, reader.Address, forget: true, Ct);
        await AssertStoppedAsync(key, "planned composed attempted unclear unsubscribed");
    }

    [Fact]
    public async Task What_went_out_while_its_reader_left_stands_as_sent()
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        var key = await mail.IssueAsync(reader);
        var claimed = await mail.ClaimAsync();
        await mail.Operators.UnsubscribeAsync(reader.Token, Ct);
        await mail.Ledger.SentAsync(claimed, Ct);
        Assert.Equal(MailState.Sent, (await mail.LineAsync(key)).State);
    }

    [Fact]
    public async Task What_waits_for_an_address_that_turns_out_to_take_no_mail_is_given_up_and_can_go_again_once_it_does()
    {
        var (wear, due) = (await mail.ReaderAsync("gone@bay.example"), await mail.ReaderAsync("gone@bay.example", DigestNames.DueList));
        await mail.IssueAsync(wear);
        mail.Time.Advance(TimeSpan.FromSeconds(1));
        var waits = await mail.IssueAsync(due);
        await mail.Ledger.RefusedAsync(await mail.ClaimAsync(), "550 5.1.1 no such user", Ct, aboutAddress: true);

        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        var line = await mail.LineAsync(waits);
        Assert.Equal((MailState.GivenUp, 0, true), (line.State, line.Attempts, line.Kept));
        Assert.Contains("takes no mail: 550 5.1.1", line.Why, StringComparison.Ordinal);
        Assert.Equal("planned composed given_up", await mail.StepsAsync(waits));

        await mail.Operators.TryAgainAsync(mail.Card, "gone@bay.example", null, Ct);
        Assert.True(await mail.Resends.TryAgainAsync(mail.Card, waits, null, Ct));
        Assert.Equal(waits, (await mail.ClaimAsync()).Message);
    }

    [Fact]
    public async Task What_is_being_sent_to_an_address_that_is_marked_meanwhile_is_tried_no_more()
    {
        var (wear, due) = (await mail.ReaderAsync("gone@bay.example"), await mail.ReaderAsync("gone@bay.example", DigestNames.DueList));
        await mail.IssueAsync(wear);
        mail.Time.Advance(TimeSpan.FromSeconds(1));
        var second = await mail.IssueAsync(due);
        var (one, two) = (await mail.ClaimAsync(), await mail.ClaimAsync());
        await mail.Ledger.RefusedAsync(one, "550 5.1.1 no such user", Ct, aboutAddress: true);
        await mail.Ledger.DeferredAsync(two, "451 4.3.0 later", Ct);
        Assert.Equal("planned composed attempted deferred given_up", await mail.StepsAsync(second));
        Assert.Equal(MailState.GivenUp, (await mail.LineAsync(second)).State);
    }

    [Fact]
    public async Task The_question_whether_an_address_wants_a_digest_goes_out_and_its_text_goes_as_soon_as_it_is_settled()
    {
        await mail.Operators.AskAsync(mail.Card, "mech@bay.example", DigestNames.DueList, null, null, Question, Ct);
        var claimed = await mail.ClaimAsync();
        Assert.Equal(DigestNames.Confirmation, claimed.Digest);
        await mail.Ledger.SentAsync(claimed, Ct);
        Assert.False((await mail.LineAsync(claimed.Message)).Kept);
    }

    [Fact]
    public async Task A_question_is_not_asked_once_its_reader_was_ended()
    {
        await mail.Operators.AskAsync(mail.Card, "mech@bay.example", DigestNames.DueList, null, null, Question, Ct);
        var claimed = await mail.ClaimAsync();
        await mail.Operators.UnsubscribeAddressAsync(mail.Card, "mech@bay.example", forget: false, Ct);
        await mail.Ledger.DeferredAsync(claimed, "451 4.3.0 later", Ct);
        await AssertStoppedAsync(claimed.Message, "planned composed attempted deferred unsubscribed");
    }

    [Fact]
    public async Task A_reader_to_whom_nothing_could_be_written_is_on_record_with_the_reason()
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        Assert.True(await mail.Ledger.IssueAsync(mail.Card, DigestNames.WeeklyWear, "2026-W48", [], [], Ct, unwritten: [reader.Id]));
        var told = Assert.Single((await mail.ToldAsync()).OfType<RecipientNotWrittenTo>());
        Assert.Equal((reader.Id, "2026-W48", "a name or an address cannot stand in a header"), (told.Recipient, told.Period, told.Why));
    }

    private static NewMail Question(Recipient reader, string secret, DateTimeOffset now) =>
        new($"q-{reader.Id}", reader.Id, $"q-{reader.Id}@fleet.example", System.Text.Encoding.UTF8.GetBytes($"Subject: want it?\r\n\r\n{secret}"));

    private async Task AssertStoppedAsync(string key, string steps)
    {
        mail.Time.Advance(TimeSpan.FromHours(5));
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        var line = await mail.LineAsync(key);
        Assert.Equal((MailState.Unsubscribed, false), (line.State, line.Kept));
        Assert.Equal(steps, await mail.StepsAsync(key));
    }
}
