using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Dock;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>What a phone carries away from the dock's signal.</summary>
public sealed class TodayTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new();
    private readonly ShiftedTime time = ShiftedTime.From(new DateTimeOffset(2026, 6, 6, 20, 0, 0, TimeSpan.Zero));
    private RunningFleet fleet = null!;
    private DockPhone phone = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("today", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);
        await SendAsync(
        [
            new OpenDock(dock.At("2026-01-01T08:00:00"), "old-mole", "Old Mole", RunningFleet.Zone, "salt", "rock"),
            .. dock.Outfit("tern", "Tern"),
            new StateFastening(dock.At("2026-01-01T09:10:00"), "e-tern", "castle_nut_cotter_pin", 25, 30, "pound_force_foot", 2, true),
            new StateEngineFit(dock.At("2026-01-01T09:10:00"), "e-tern", SplineTeeth: 13, Rotation: "right", LargestDiameterInches: 12),
            .. Enumerable.Range(1, 4).Select(i => dock.Trial("tern", $"2026-0{i}-20T10:00:00", 5600 + (10 * i), 95 + (10 * i)) with { AirTemperatureCelsius = 18, PressureHectopascals = 1009, HumidityPercent = 70 }),
            new RegisterProp(dock.At("2026-03-01T09:00:00"), "spare-13", 11.5, 13, 3, "stainless", "right"),
            new StoreProp(dock.At("2026-03-01T09:05:00"), "spare-13", "old-mole"),
            new StockPart(dock.At("2026-01-01T08:00:00"), "pin-3x25", "cotter_pin", "old-mole", 12),
            new ReportStrike(dock.At("2026-06-05T10:00:00"), "tern", "single", "rock", "bent"),
            new RegisterBoat(dock.At("2026-01-01T09:00:00"), "far", "Fulmar", "new-mole", RunningFleet.Zone, "fresh", ["single"]),
        ]);
        phone = await DockPhone.EnrolledAsync(fleet);
    }

    public async ValueTask DisposeAsync()
    {
        phone.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task It_has_the_dock_its_boats_whole_and_the_others_by_name()
    {
        var today = await TodayAsync();
        Assert.Equal("Old Mole", Text(today["dock"]!["name"]));
        Assert.Equal("rock", Text(today["dock"]!["bottom"]));
        Assert.Equal(12, today["staleAfterHours"]!.GetValue<double>());
        Assert.Equal("Tern", Text(Assert.Single(today["boats"]!.AsArray())!["name"]));
        Assert.Equal("Fulmar", Text(Assert.Single(today["others"]!.AsArray())!["name"]));
        Assert.Equal(12, Assert.Single(today["parts"]!.AsArray())!["atDock"]!.GetValue<int>());
        Assert.Equal("spare-13", Text(Assert.Single(today["spares"]!.AsArray())!["prop"]));
        Assert.Contains(today["policy"]!["rules"]!.AsArray(), r => Text(r!["id"]) == "six-monthly");
    }

    [Fact]
    public async Task A_card_says_whether_the_boat_goes_out_and_what_releases_it_in_the_words_of_the_record()
    {
        var tern = (await TodayAsync())["boats"]![0]!;
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
        var at = (await TodayAsync())["boats"]![0]!["positions"]![0]!;
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
        var at = (await TodayAsync())["boats"]![0]!["positions"]![0]!;
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

    [Fact]
    public async Task Who_has_it_already_gets_no_body_however_late_and_is_told_that_it_is_fresh()
    {
        using var first = await phone.Http.GetAsync("/dock/api/today", Ct);
        time.Move(TimeSpan.FromMinutes(3));
        using var ask = new HttpRequestMessage(HttpMethod.Get, "/dock/api/today");
        ask.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        using var again = await phone.Http.SendAsync(ask, Ct);
        Assert.Equal(HttpStatusCode.NotModified, again.StatusCode);
        Assert.True(DateTimeOffset.Parse(again.Headers.GetValues("FleetWake-Made-At").Single()) > DateTimeOffset.Parse(first.Headers.GetValues("FleetWake-Made-At").Single()));

        await SendAsync([new ReportStrike(dock.At("2026-06-06T10:00:00"), "tern", "single", "rock", "scuffed")]);
        using var changed = new HttpRequestMessage(HttpMethod.Get, "/dock/api/today");
        changed.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        Assert.Equal(HttpStatusCode.OK, (await phone.Http.SendAsync(changed, Ct)).StatusCode);
    }

    [Fact]
    public async Task A_card_that_calls_itself_up_to_date_has_every_record_that_was_answered_before()
    {
        for (var i = 0; i < 10; i++)
        {
            var strike = new ReportStrike(dock.At($"2026-06-06T1{i}:00:00") with { Id = new Guid(7000 + i, 7, 7, new byte[8]) }, "far", "single", "rock", "bent");
            Assert.Equal("recorded", Text((await phone.SendAsync([strike]))[0]!["outcome"]));
            var card = (await phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/boats/far", Ct))!;
            if (card["upToDate"]!.GetValue<bool>()) Assert.Equal(i + 1, card["positions"]![0]!["openStrikes"]!.AsArray().Count);
        }

        await RunningFleet.UntilAsync("a card that is up to date", async () => (await phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/boats/far", Ct))!["upToDate"]!.GetValue<bool>(), Ct);
        Assert.True((await TodayAsync())["boats"]![0]!["upToDate"]!.GetValue<bool>());
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

    private async Task<JsonObject> TodayAsync() => (await phone.Http.GetFromJsonAsync<JsonObject>("/dock/api/today", Ct))!;

    private async Task SendAsync(IEnumerable<ICommand> records)
    {
        Assert.All(await fleet.SendAsync(records, Ct), r => Assert.Equal("recorded", Text(r!["outcome"])));
        await RunningFleet.UntilAsync("the findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
