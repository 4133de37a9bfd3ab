using FleetWake.Store.Alerts;
using FleetWake.Store.Mail;
using FleetWake.Tests.Kit;

namespace FleetWake.Store.Tests.Mail;

/// <summary>What was told by alert, over pauses: whoever comes back, or switches alerts on again, is not told what the weekly digest has told.</summary>
public sealed class AlertBookTests(PostgresFixture postgres) : IAsyncLifetime
{
    private StoredMail mail = null!;
    private AlertBook book = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        mail = await StoredMail.OpenAsync(postgres);
        book = new AlertBook(mail.Database.Store, mail.Database.Source, new AlertHooks(mail.Database.Store, mail.Database.Source, mail.Time), mail.Time);
    }

    public ValueTask DisposeAsync() => mail.DisposeAsync();

    [Fact]
    public async Task After_a_pause_what_arose_meanwhile_counts_as_told_and_only_what_is_fresh_waits()
    {
        Assert.Equal(["strike"], await WaitingAsync(null, ("old", false), ("strike", true)));
        Assert.True(await book.TellAsync(mail.Card, null, "a-1", [], ["strike"], null, Ct));
        Assert.Equal(["drift"], await WaitingAsync(null, ("old", false), ("strike", false), ("drift", false)));

        await book.OnlyAsync(mail.Card.Id, [], Ct); // switched off, while one was being gathered
        mail.Time.Advance(TimeSpan.FromDays(5));
        Assert.Equal(["today"], await WaitingAsync(null, ("old", false), ("strike", false), ("drift", false), ("meanwhile", false), ("today", true)));
        Assert.Equal(["later", "today"], await WaitingAsync(null, ("meanwhile", false), ("drift", false), ("today", true), ("later", false)));
    }

    [Fact]
    public async Task What_was_being_gathered_when_the_only_reader_was_replaced_is_told_to_the_next_one()
    {
        Assert.Empty(await WaitingAsync(null, ("old", false)));
        var seen = mail.Time.GetUtcNow();
        Assert.Equal(["exit"], await WaitingAsync(null, ("old", false), ("exit", false))); // quiet hours

        mail.Time.Advance(TimeSpan.FromHours(8));
        await book.OnlyAsync(mail.Card.Id, [], Ct);
        await book.OnlyAsync(mail.Card.Id, [null], Ct);
        Assert.Equal(KeyValuePair.Create("exit", seen), Assert.Single(await book.WaitingAsync(mail.Card.Id, null, new Dictionary<string, bool> { ["old"] = false, ["exit"] = false, ["meanwhile"] = false }, Ct)));
        Assert.True(await book.TellAsync(mail.Card, null, "a-1", [], ["exit"], null, Ct));
        await book.OnlyAsync(mail.Card.Id, [], Ct);
        Assert.Empty(await WaitingAsync(null, ("old", false), ("exit", false), ("meanwhile", false)));
    }

    [Fact]
    public async Task The_pause_of_one_docks_readers_is_none_of_anothers()
    {
        Assert.Empty(await WaitingAsync("north-pier", ("old", false)));
        Assert.Empty(await WaitingAsync(null, ("old", false)));
        await book.OnlyAsync(mail.Card.Id, ["north-pier"], Ct);
        Assert.Equal(["drift"], await WaitingAsync("north-pier", ("old", false), ("drift", false)));
        Assert.Empty(await WaitingAsync(null, ("old", false), ("drift", false)));
        await book.OnlyAsync("another", [], Ct);
        Assert.Equal(["drift"], await WaitingAsync("north-pier", ("old", false), ("drift", false)));
    }

    private async Task<IEnumerable<string>> WaitingAsync(string? dock, params (string Cause, bool Fresh)[] standing) =>
        (await book.WaitingAsync(mail.Card.Id, dock, standing.ToDictionary(s => s.Cause, s => s.Fresh, StringComparer.Ordinal), Ct)).Keys.Order(StringComparer.Ordinal);
}
