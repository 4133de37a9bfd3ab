using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Store.Histories;
using FleetWake.Tests.Program;
using FleetWake.Web.Dock;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>What a phone carries away from the dock's signal.</summary>
public sealed class TodayTests(TodayFleet today) : IClassFixture<TodayFleet>
{
    private readonly RunningFleet fleet = today.Fleet;
    private readonly DockPhone phone = today.Phone;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_has_the_dock_its_boats_whole_and_the_others_by_name()
    {
        var told = await today.TodayAsync();
        Assert.Equal("Old Mole", Text(told["dock"]!["name"]));
        Assert.Equal("rock", Text(told["dock"]!["bottom"]));
        Assert.Equal(12, told["staleAfterHours"]!.GetValue<double>());
        Assert.Equal("Tern", Text(Assert.Single(told["boats"]!.AsArray())!["name"]));
        Assert.Equal("Fulmar", Text(Assert.Single(told["others"]!.AsArray())!["name"]));
        Assert.Equal(12, Assert.Single(told["parts"]!.AsArray())!["atDock"]!.GetValue<int>());
        Assert.Equal("spare-13", Text(Assert.Single(told["spares"]!.AsArray())!["prop"]));
        Assert.Contains(told["policy"]!["rules"]!.AsArray(), r => Text(r!["id"]) == "six-monthly");
    }

    [Fact]
    public async Task A_card_says_whether_the_boat_goes_out_and_what_releases_it_in_the_words_of_the_record()
    {
        var tern = (await today.TodayAsync())["boats"]![0]!;
        Assert.Equal("out", Text(tern["hire"]!["word"]));
        var reason = Assert.Single(tern["hire"]!["reasons"]!.AsArray())!;
        Assert.Equal("Strike on rock (bent) on 2026-06-05.", Text(reason["sentence"]));
        Assert.Equal("An inspection dated after the strike with the verdict fit.", Text(reason["releasedBy"]));
        Assert.Contains(tern["attention"]!.AsArray(), a => Text(a).StartsWith("Strike on rock (bent)", StringComparison.Ordinal));
        Assert.Contains(tern["due"]!.AsArray(), d => Text(d!["ruleId"]) == "after-strike");
        var at = tern["positions"]![0]!;
        Assert.Equal("bent", Text(Assert.Single(at["openStrikes"]!.AsArray())!["severity"]));
    }

    [Fact]
    public async Task A_position_has_what_the_manual_says_in_both_units_and_the_spares_that_fit()
    {
        var at = (await today.TodayAsync())["boats"]![0]!["positions"]![0]!;
        Assert.Equal((5000, 6000), (at["engine"]!["ratedBand"]!["low"]!.GetValue<double>(), at["engine"]!["ratedBand"]!["high"]!.GetValue<double>()));
        Assert.Equal(25, at["engine"]!["torque"]!["poundForceFeet"]!.GetValue<double>());
        Assert.Equal(33.9, at["engine"]!["torque"]!["newtonMetres"]!.GetValue<double>());
        Assert.Equal(2, at["engine"]!["fastening"]!["slots"]!.GetValue<int>());
        Assert.Equal(30, at["engine"]!["fastening"]!["torqueRange"]!["high"]!["value"]!.GetValue<double>());
        Assert.Equal("right", Text(at["mounting"]!["rotation"]));
        Assert.Equal((135, "2026-04-20"), (at["hours"]!["value"]!.GetValue<double>(), Text(at["hours"]!["on"])));
        var fit = Assert.Single(at["fits"]!.AsArray())!;
        Assert.Equal(("spare-13", "11.5 x 13 in", true), (Text(fit["prop"]), Text(fit["size"]), fit["here"]!.GetValue<bool>()));
        Assert.Equal(18, at["lastTrial"]!["airTemperatureCelsius"]!.GetValue<double>());
        Assert.Contains("below the top", Text(at["standing"]!["sentence"]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_its_reference_a_phone_reckons_the_RPM_that_the_finding_states()
    {
        var at = (await today.TodayAsync())["boats"]![0]!["positions"]![0]!;
        var (reference, last) = (at["reference"]!, at["lastTrial"]!);
        double Number(JsonNode node, string name) => node[name]!.GetValue<double>();
        var (t, p, h) = (Number(last, "airTemperatureCelsius"), Number(last, "pressureHectopascals"), Number(last, "humidityPercent") / 100);
        var p_sv = 6.1094 * Math.Exp(17.625 * t / (t + 243.04));
        var factor = (1.18 * (990 / (p - (h * p_sv))) * Math.Sqrt((t + 273) / 298)) - 0.18;
        var rpm = Number(last, "rpm") * Math.Pow(factor, Number(reference, "gain"));

        var finding = await fleet.Service<FleetReading>().FindingAsync(RunningFleet.Operator, "tern", Ct);
        var stated = finding!.Finding.Positions[0].Mounting!.Trials[^1].Reference!;
        Assert.Equal(stated.CorrectionFactor!.Value, factor, 6);
        Assert.Equal(stated.Rpm, rpm, 2);
        Assert.Equal(0.38, Number(reference, "gain"));
    }

    [Theory]
    [InlineData("/dock/")]
    [InlineData("/dock/texts.json")]
    [InlineData("/dock/manifest.webmanifest")]
    public async Task A_file_of_another_version_is_not_given(string path)
    {
        Assert.Equal(HttpStatusCode.OK, (await phone.Http.GetAsync(path, Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await phone.Http.GetAsync(path + "?v=000000000000", Ct)).StatusCode);
    }

    [Fact]
    public void A_change_of_the_page_alone_is_another_version() => Assert.NotEqual(DockShell.VersionOf("<p>"), DockShell.VersionOf("<p> "));

    [Fact]
    public async Task A_boat_of_another_dock_is_read_by_itself_and_one_that_nobody_knows_is_told_so()
    {
        var far = (await phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/boats/far", Ct))!;
        Assert.Equal("new-mole", Text(far["dock"]));
        Assert.Equal("look_first", Text(far["hire"]!["word"]));
        Assert.Equal(HttpStatusCode.NotFound, (await phone.Http.GetAsync("/dock/api/boats/nobody", Ct)).StatusCode);
    }

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
