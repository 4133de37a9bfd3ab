using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Strikes;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>What a phone carries away, while the record changes.</summary>
public sealed class TodayNewsTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly TodayFleet today = new(postgres);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => today.InitializeAsync();

    public ValueTask DisposeAsync() => today.DisposeAsync();

    [Fact]
    public async Task Who_has_it_already_gets_no_body_however_late_and_is_told_that_it_is_fresh()
    {
        using var first = await today.Phone.Http.GetAsync("/dock/api/today", Ct);
        today.Time.Move(TimeSpan.FromMinutes(3));
        using var ask = new HttpRequestMessage(HttpMethod.Get, "/dock/api/today");
        ask.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var again = await today.Phone.Http.SendAsync(ask, Ct);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        Assert.True(DateTimeOffset.Parse(again.Headers.GetValues("FleetWake-Made-At").Single()) > DateTimeOffset.Parse(first.Headers.GetValues("FleetWake-Made-At").Single()));

        await today.SendAsync([new ReportStrike(today.Dock.At("2026-06-06T10:00:00"), "tern", "single", "rock", "scuffed")]);
        using var changed = new HttpRequestMessage(HttpMethod.Get, "/dock/api/today");
        changed.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        Assert.Equal(HttpStatusCode.OK, (await today.Phone.Http.SendAsync(changed, Ct)).StatusCode);
    }

    [Fact]
    public async Task A_card_that_calls_itself_up_to_date_has_every_record_that_was_answered_before()
    {
        for (var i = 0; i < 10; i++)
        {
            var strike = new ReportStrike(today.Dock.At($"2026-06-06T1{i}:00:00") with { Id = new Guid(7000 + i, 7, 7, new byte[8]) }, "far", "single", "rock", "bent");
            Assert.Equal("recorded", Text((await today.Phone.SendAsync([strike]))[0]!["outcome"]));
            var card = (await today.Phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/boats/far", Ct))!;
            if (card["upToDate"]!.GetValue<bool>()) Assert.Equal(i + 1, card["positions"]![0]!["openStrikes"]!.AsArray().Count);
        }

        await RunningFleet.UntilAsync("a card that is up to date", async () => (await today.Phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/boats/far", Ct))!["upToDate"]!.GetValue<bool>(), Ct);
        Assert.True((await today.TodayAsync())["boats"]![0]!["upToDate"]!.GetValue<bool>());
    }

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
