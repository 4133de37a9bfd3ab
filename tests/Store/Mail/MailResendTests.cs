using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>A message sent again because a person asked for it: the ledger says who, and so why it came twice.</summary>
public sealed class MailResendTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => mail = await StoredMail.OpenAsync(postgres);

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task What_was_not_accepted_is_tried_again_as_it_is_under_its_old_Message_ID()
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        var first = await mail.ClaimAsync();
        await mail.Ledger.RefusedAsync(first, "554 5.7.1 no", Ct);
        Assert.Equal(Resend.Queued, await mail.Resends.LookAsync(mail.Card.Id, await mail.LineAsync(key), Ct));
        Assert.True(await mail.Resends.TryAgainAsync(mail.Card, key, "boss-1", Ct));
        Assert.False(await mail.Resends.TryAgainAsync(mail.Card, key, "boss-1", Ct));
        Assert.Equal(Resend.OnItsWay, await mail.Resends.LookAsync(mail.Card.Id, await mail.LineAsync(key), Ct));
        var second = await mail.ClaimAsync();
        Assert.Equal(2, second.Attempt);
        Assert.Equal(first.Mime, second.Mime);
        await mail.Ledger.SentAsync(second, Ct);
        Assert.Equal("planned composed attempted refused resend_asked attempted sent", await mail.StepsAsync(key));
        Assert.Equal("boss-1", (await mail.Reading.HistoryAsync(mail.Card.Id, key, Ct)).Single(s => s.Fact == "mail_resend_asked").By);
    }

    [Fact]
    public async Task What_was_left_alone_as_unclear_gets_one_more_try_a_request_and_stays_listed()
    {
        var key = await mail.IssueAsync(await mail.ReaderAsync("boss@bay.example"));
        for (var i = 0; i < 3; i++)
        {
            await mail.Ledger.UnclearAsync(await mail.ClaimAsync(), "cut", Ct);
            mail.Time.Advance(TimeSpan.FromHours(1));
        }

        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        Assert.True(await mail.Resends.TryAgainAsync(mail.Card, key, null, Ct));
        await mail.Ledger.UnclearAsync(await mail.ClaimAsync(), "cut", Ct);
        mail.Time.Advance(TimeSpan.FromHours(1));
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        Assert.Equal((MailState.GivenUp, 4), ((await mail.LineAsync(key)) is var l ? (l.State, l.Unclear) : default)); // as many copies may lie there
        Assert.True(await mail.Resends.TryAgainAsync(mail.Card, key, null, Ct));
        await mail.Ledger.UnclearAsync(await mail.ClaimAsync(), "cut", Ct);
        mail.Time.Advance(TimeSpan.FromHours(1));
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
        Assert.Equal(5, (await mail.LineAsync(key)).Unclear);
    }

    [Fact]
    public async Task What_was_accepted_goes_as_another_message_that_names_the_first_once_a_wish()
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        var key = await mail.IssueAsync(reader);
        await mail.Ledger.SentAsync(await mail.ClaimAsync(), Ct);
        var line = await mail.LineAsync(key);
        Assert.Equal(Resend.AsAnother, await mail.Resends.LookAsync(mail.Card.Id, line, Ct));
        var again = await mail.Resends.KeyAsync(mail.Card.Id, key, Ct);
        Assert.Equal($"{key}-again-1-20261130T0700Z", again);
        var repeat = new NewMail(again, reader.Id, "again@fleet.example", "Subject: hello\r\n\r\nhello"u8.ToArray());
        Assert.True(await mail.Resends.AgainAsync(mail.Card, line, repeat, "boss-1", Ct));
        Assert.False(await mail.Resends.AgainAsync(mail.Card, line, repeat, "boss-1", Ct)); // pressed twice
        Assert.Equal($"{key}-again-2-20261130T0700Z", await mail.Resends.KeyAsync(mail.Card.Id, key, Ct));
        Assert.Equal((key, "2026-W48"), (await mail.LineAsync(again)) is var l ? (l.AgainOf, l.Period) : default);
        Assert.Equal("planned composed attempted sent resend_asked", await mail.StepsAsync(key));
        Assert.Equal(again, (await mail.ClaimAsync()).Message);
        Assert.Null(await mail.Ledger.ClaimAsync(Ct));
    }

    [Fact]
    public async Task Nothing_is_sent_again_to_who_left_to_an_address_that_takes_no_mail_or_without_its_text()
    {
        var (left, gone, old) = (await mail.ReaderAsync("a@bay.example"), await mail.ReaderAsync("b@bay.example"), await mail.ReaderAsync("c@bay.example"));
        var keys = new List<string> { await mail.IssueAsync(left, "2026-W01"), await mail.IssueAsync(gone, "2026-W02"), await mail.IssueAsync(old, "2026-W03") };
        for (var i = 0; i < 3; i++)
        {
            var claimed = await mail.ClaimAsync();
            if (claimed.Message == keys[1]) await mail.Ledger.RefusedAsync(claimed, "550", Ct, aboutAddress: true);
            else await mail.Ledger.SentAsync(claimed, Ct);
        }

        await mail.Operators.UnsubscribeAsync(left.Token, Ct);
        Assert.Equal(Resend.ReaderLeft, await mail.Resends.LookAsync(mail.Card.Id, await mail.LineAsync(keys[0]), Ct));
        Assert.Equal(Resend.TakesNoMail, await mail.Resends.LookAsync(mail.Card.Id, await mail.LineAsync(keys[1]), Ct));
        mail.Time.Advance(TimeSpan.FromDays(31));
        await mail.Ledger.ForgetSettledAsync(Ct);
        Assert.Equal(Resend.NotKept, await mail.Resends.LookAsync(mail.Card.Id, await mail.LineAsync(keys[2]), Ct));
    }
}
