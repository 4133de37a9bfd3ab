using System.Net;
using System.Text.Json.Nodes;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Api;

/// <summary>What the whole fleet shows: life, costs, strikes and spares.</summary>
[Collection(ReadingFleet.Shared)]
public sealed class FleetFiguresTests(ReadingFleet fleet)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Life_is_told_for_both_questions_and_says_when_a_group_is_too_small()
    {
        var life = await fleet.OneAsync("/api/fleet/life");
        Assert.Equal(("used_up", "worn"), (Text(life["usedUp"]!["question"]), Text(life["worn"]!["question"])));
        var aluminium = Assert.Single(life["usedUp"]!["byMaterial"]!.AsArray())!;
        Assert.Equal("aluminium", Text(aluminium["group"]));
        Assert.Contains("too few to say", Text(aluminium["sentence"]), StringComparison.Ordinal);
        Assert.Null(aluminium["medianHours"]);
    }

    [Fact]
    public async Task Costs_without_prices_are_words() =>
        Assert.StartsWith("Prices are not set", Text((await fleet.OneAsync("/api/fleet/costs"))["sentence"]), StringComparison.Ordinal);

    [Fact]
    public async Task A_strike_counts_once_as_amended_over_the_hours_of_its_boat()
    {
        var strikes = await fleet.OneAsync("/api/fleet/strikes");
        var tern = strikes["byBoat"]!.AsArray().Single(b => Text(b!["group"]) == "tern")!;
        Assert.Equal(("Tern", 1, 1, 40), (Text(tern["name"]), tern["strikes"]!.GetValue<int>(), tern["leftMark"]!.GetValue<int>(), tern["engineHours"]!.GetValue<double>()));
        Assert.Equal(25, tern["all"]!["exact"]!["value"]!.GetValue<double>(), 1e-9);
        Assert.True(tern["all"]!["shrunk"]!["low"]!.GetValue<double>() > 0);
        Assert.Equal("The Old Mole", Text(strikes["byDock"]!.AsArray().Single(d => Text(d!["group"]) == "old-mole")!["name"]));
    }

    [Fact]
    public async Task Spares_answer_the_question_that_is_asked()
    {
        var usual = await fleet.OneAsync("/api/fleet/spares");
        Assert.Equal((42, 0.95), (usual["question"]!["leadTimeDays"]!.GetValue<double>(), usual["question"]!["serviceLevel"]!.GetValue<double>()));
        var size = Assert.Single(usual["sizes"]!.AsArray())!;
        Assert.Equal((1, 1), (size["count"]!["atHand"]!.GetValue<int>(), size["count"]!["toMend"]!.GetValue<int>()));
        var longer = (await fleet.OneAsync("/api/fleet/spares?leadTimeDays=365&serviceLevel=0.99&season=1.5"))["sizes"]![0]!;
        Assert.True(longer["baseStock"]!.GetValue<int>() > size["baseStock"]!.GetValue<int>());
        Assert.Equal("pin", Text(Assert.Single(usual["parts"]!.AsArray())!["part"]));
    }

    [Fact]
    public async Task A_question_out_of_range_is_refused_with_its_range()
    {
        var refused = await fleet.RefusedAsync("/api/fleet/spares?leadTimeDays=0&serviceLevel=NaN&season=11&dock=x");
        Assert.Equal(["dock", "leadTimeDays", "season", "serviceLevel"], refused.Keys.Order(StringComparer.Ordinal));
        Assert.Contains("0.5 to 0.999", refused["serviceLevel"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Forecasts_of_a_month_are_held_against_what_came_as_the_store_reckons_them()
    {
        var said = await fleet.OneAsync("/api/fleet/calibration?month=2026-03");
        Assert.Equal("2026-03-31", Text(said["made"]));
        Assert.Equal(0.8, said["nextTrial"]!["level"]!.GetValue<double>());
        Assert.StartsWith("Forecasts of 2026-03-31.", Text(said["sentence"]), StringComparison.Ordinal);
        var stored = await fleet.Fleet.Service<Store.Histories.FleetReading>().CalibrationAsync(RunningFleet.Operator, new DateOnly(2026, 3, 31), Ct);
        Assert.Equal((stored.NextTrial.Judged, stored.NextTrial.Open, stored.Sentence), (said["nextTrial"]!["judged"]!.GetValue<int>(), said["nextTrial"]!["open"]!.GetValue<int>(), Text(said["sentence"])));
    }

    [Theory]
    [InlineData("2026-3", "as in 2026-05")]
    [InlineData("2026-13", "as in 2026-05")]
    [InlineData("2999-01", "a month that is over")]
    public async Task A_month_that_is_none_or_not_over_is_refused(string month, string says) =>
        Assert.Contains(says, (await fleet.RefusedAsync($"/api/fleet/calibration?month={month}"))["month"], StringComparison.Ordinal);

    [Theory]
    [InlineData("/api/fleet/life")]
    [InlineData("/api/fleet/costs")]
    [InlineData("/api/fleet/strikes")]
    [InlineData("/api/fleet/spares")]
    [InlineData("/api/fleet/calibration")]
    public async Task An_unchanged_answer_is_told_without_a_body(string path)
    {
        using var first = await fleet.Fleet.Http.GetAsync(path, Ct);
        Assert.False(first.Headers.ETag!.IsWeak);
        using var again = new HttpRequestMessage(HttpMethod.Get, path) { Headers = { IfNoneMatch = { first.Headers.ETag } } };
        using var second = await fleet.Fleet.Http.SendAsync(again, Ct);
        Assert.Equal(HttpStatusCode.NotModified, second.StatusCode);
    }

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
