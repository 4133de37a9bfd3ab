using FleetWake.Logbook.Mail;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>Who receives: each address once, and no change of it lost to another.</summary>
public sealed class ReaderTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync() => mail = await StoredMail.OpenAsync(postgres);

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task However_many_subscribe_an_address_at_once_and_however_it_is_typed_it_is_one_reader()
    {
        await Task.WhenAll(Enumerable.Range(0, 8).Select(i => mail.Operators.SubscribeAsync(mail.Card, i % 2 == 0 ? "boss@bay.example" : "Boss@Bay.example", DigestNames.WeeklyWear, Ct)));
        Assert.Single(await mail.Operators.AllRecipientsAsync(mail.Card.Id, Ct));
        await mail.Operators.SubscribeAsync(mail.Card, "boss@bay.example", DigestNames.WeeklyWear, Ct, "north-pier");
        await mail.Operators.SubscribeAsync(mail.Card, "BOSS@bay.example", DigestNames.WeeklyWear, Ct, "North-Pier");
        Assert.Equal([null, "North-Pier"], (await mail.Operators.AllRecipientsAsync(mail.Card.Id, Ct)).Select(r => r.Dock));
        Assert.True(await mail.Operators.UnsubscribeAddressAsync(mail.Card, "BOSS@BAY.EXAMPLE", forget: true, Ct));
        Assert.Empty(await mail.Operators.AllRecipientsAsync(mail.Card.Id, Ct));
    }

    [Fact]
    public async Task An_address_that_an_earlier_version_kept_in_two_spellings_is_written_to_once_and_leaves_at_once()
    {
        var reader = await mail.ReaderAsync("boss@bay.example");
        await using (var session = mail.Database.Store.LightweightSession(mail.Card.Id))
        {
            session.Insert(new Recipient("r-older", "Boss@Bay.example", DigestNames.WeeklyWear, "older", true));
            session.Insert(new UnsubscribeToken("older", mail.Card.Id, "r-older"));
            await session.SaveChangesAsync(Ct);
        }

        Assert.Single(await mail.Operators.SubscribersAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct));
        Assert.Empty((await mail.Operators.LinkedAsync(reader.Token, Ct))!.Others);
        Assert.True(await mail.Operators.UnsubscribeAsync(reader.Token, Ct, byItself: true));
        Assert.Empty(await mail.Operators.SubscribersAsync(mail.Card.Id, DigestNames.WeeklyWear, Ct));
    }

    [Fact]
    public async Task Who_leaves_while_a_server_refuses_the_address_has_left_and_takes_no_mail()
    {
        for (var i = 0; i < 10; i++)
        {
            var reader = await mail.ReaderAsync($"gone{i}@bay.example");
            await mail.IssueAsync(reader, $"2026-W{i + 10}");
            var claimed = await mail.ClaimAsync();
            await Task.WhenAll(mail.Ledger.RefusedAsync(claimed, "550 5.1.1 no such user", Ct, aboutAddress: true), mail.Operators.UnsubscribeAsync(reader.Token, Ct));
            var now = (await mail.Operators.AllRecipientsAsync(mail.Card.Id, Ct)).Single(r => r.Id == reader.Id);
            Assert.False(now.Subscribed);
            Assert.NotNull(now.NoMailSince);
        }
    }

    [Fact]
    public async Task An_address_is_asked_once_a_day_whatever_it_is_asked_about_and_also_when_it_leaves_in_between()
    {
        Assert.Equal(Asked.Now, await AskAsync("mech@bay.example", DigestNames.DueList, null));
        Assert.Equal(Asked.AskedLately, await AskAsync("mech@bay.example", DigestNames.DueList, "north-pier"));
        Assert.Equal(Asked.AskedLately, await AskAsync("MECH@bay.example", DigestNames.Alert, null));
        await mail.Operators.UnsubscribeAddressAsync(mail.Card, "mech@bay.example", forget: false, Ct);
        Assert.Equal(Asked.AskedLately, await AskAsync("mech@bay.example", DigestNames.DueList, null));
        mail.Time.Advance(FleetOperators.AskAgainAfter);
        Assert.Equal(Asked.Now, await AskAsync("mech@bay.example", DigestNames.Alert, null));
    }

    [Fact]
    public async Task Who_left_by_a_link_comes_back_by_it_within_a_month_and_nobody_whom_somebody_else_took_off()
    {
        var (reader, other) = (await mail.ReaderAsync("mech@bay.example", DigestNames.DueList), await mail.ReaderAsync("Mech@bay.example", DigestNames.Alert));
        Assert.Equal([other.Id], (await mail.Operators.LinkedAsync(reader.Token, Ct))!.Others.Select(o => o.Id));
        Assert.True(await mail.Operators.UnsubscribeAsync(reader.Token, Ct, byItself: true));
        Assert.True((await mail.Operators.LinkedAsync(reader.Token, Ct))!.MayComeBack);
        mail.Time.Advance(FleetOperators.ComeBackWithin - TimeSpan.FromMinutes(1));
        Assert.True(await mail.Operators.ComeBackAsync(reader.Token, Ct));
        Assert.Equal([reader.Id], (await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.DueList, Ct)).Select(r => r.Id));

        Assert.True(await mail.Operators.UnsubscribeAsync(reader.Token, Ct, byItself: true));
        mail.Time.Advance(FleetOperators.ComeBackWithin);
        Assert.False(await mail.Operators.ComeBackAsync(reader.Token, Ct));

        Assert.True(await mail.Operators.UnsubscribeAsync(other.Token, Ct)); // at the office
        Assert.True(await mail.Operators.UnsubscribeAsync(other.Token, Ct, byItself: true)); // and by the link of an old message
        Assert.False(await mail.Operators.ComeBackAsync(other.Token, Ct));
        Assert.False(await mail.Operators.ComeBackAsync("made-up", Ct));
        Assert.Null(await mail.Operators.LinkedAsync("made-up", Ct));
        Assert.Empty(await mail.Operators.RecipientsAsync(mail.Card.Id, DigestNames.Alert, Ct));
    }

    [Fact]
    public async Task However_many_ask_an_address_at_once_it_is_asked_once()
    {
        var asked = await Task.WhenAll(Enumerable.Range(0, 6).Select(i => AskAsync("mech@bay.example", DigestNames.All[i % DigestNames.All.Count], null)));
        Assert.Single(asked, Asked.Now);
    }

    private Task<Asked> AskAsync(string address, string digest, string? dock) => mail.Operators.AskAsync(
        mail.Card, address, digest, dock, null, (reader, secret, now) => new NewMail($"q-{now.Ticks}-{reader.Id}", reader.Id, $"q-{now.Ticks}-{reader.Id}@fleet.example", "Subject: want it?\r\n\r\n"u8.ToArray()), Ct);
}
