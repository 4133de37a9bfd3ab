using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Store.Layouts;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using Microsoft.Extensions.Time.Testing;

namespace FleetWake.Store.Tests.Layouts;

/// <summary>Templates that operators saved, version by version.</summary>
public sealed class LayoutBookTests(PostgresFixture postgres) : IAsyncLifetime
{
    private const string File = "weekly-wear.html.liquid";
    private static readonly OperatorCard Card = new("skerry-bay", "Skerry Bay Hire", "Pacific/Auckland");
    private readonly FakeTimeProvider time = new(new DateTimeOffset(2026, 6, 1, 8, 0, 0, TimeSpan.Zero));
    private FleetDatabase database = null!;
    private LayoutBook book = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        database = await FleetDatabase.OnAsync(await postgres.NewDatabaseAsync("layouts"), Ct);
        book = new LayoutBook(database.Store, time);
    }

    public ValueTask DisposeAsync() => database.DisposeAsync();

    [Fact]
    public async Task The_newest_that_was_saved_is_in_force_and_the_earlier_ones_are_kept()
    {
        Assert.True(await book.SaveAsync(Card, "boss", File, "one", 0, Ct));
        Assert.True(await book.SaveAsync(Card, "boss", File, "two", 1, Ct));
        Assert.Equal("two", (await book.OwnAsync(Card.Id, Ct))[File]);
        Assert.Equal(["two", "one"], (await book.VersionsAsync(Card.Id, File, Ct)).Select(v => v.Text));
        Assert.Empty(await book.OwnAsync("somebody-else", Ct));
    }

    [Fact]
    public async Task Whoever_did_not_see_the_newest_version_does_not_write_over_it()
    {
        Assert.True(await book.SaveAsync(Card, "boss", File, "one", 0, Ct));
        Assert.False(await book.SaveAsync(Card, "other", File, "mine", 0, Ct));
        var both = await Task.WhenAll(Enumerable.Range(0, 8).Select(i => book.SaveAsync(Card, $"m-{i}", File, $"text {i}", 1, Ct)));
        Assert.Single(both, saved => saved);
        Assert.Equal(2, (await book.VersionsAsync(Card.Id, File, Ct)).Count);
    }

    [Fact]
    public async Task An_earlier_version_or_everybodys_can_be_put_back_and_the_record_says_who_did()
    {
        await book.SaveAsync(Card, "boss", File, "one", 0, Ct);
        await book.SaveAsync(Card, "boss", File, "two", 1, Ct);
        Assert.True(await book.ChooseAsync(Card, "kit", File, 1, Ct));
        Assert.Equal("one", (await book.OwnAsync(Card.Id, Ct))[File]);
        Assert.True(await book.ChooseAsync(Card, "kit", File, null, Ct));
        Assert.Empty(await book.OwnAsync(Card.Id, Ct));
        Assert.False(await book.ChooseAsync(Card, "kit", File, 9, Ct));
        await using var session = database.Store.QuerySession(Card.Id);
        var told = (await session.Events.FetchStreamAsync(StreamName.Operator, token: Ct)).Select(e => e.Data).OfType<TemplateChosen>().ToList();
        Assert.Equal(new (string, int?)[] { ("boss", 1), ("boss", 2), ("kit", 1), ("kit", null) }, told.Select(t => (t.Entry.By, t.Version)));
        Assert.DoesNotContain("two", string.Join(' ', told), StringComparison.Ordinal); // no free text in facts
    }

    [Fact]
    public async Task What_served_is_kept_while_something_fails_and_the_failure_goes_away_when_it_serves_again()
    {
        await book.KeepAsync(Card.Id, "weekly-wear", new Dictionary<string, string> { [File] = "good" }, null, Ct);
        await book.KeepAsync(Card.Id, "weekly-wear", new Dictionary<string, string>(), "line 3: broken", Ct);
        var state = (await book.StateAsync(Card.Id, "weekly-wear", Ct))!;
        Assert.Equal(("good", "line 3: broken", time.GetUtcNow()), (state.LastGood[File], state.Why, state.FailedAt));
        await book.KeepAsync(Card.Id, "weekly-wear", new Dictionary<string, string>(), null, Ct);
        Assert.Null((await book.StateAsync(Card.Id, "weekly-wear", Ct))!.Why);
    }
}
