using System.Net;
using System.Text.Json.Nodes;

namespace FleetWake.Journey.Tests.Api;

/// <summary>What is read back: boats, engines, mountings, questions, due lists and the record itself.</summary>
[Collection(ReadingFleet.Shared)]
public sealed class ReadingApiTests(ReadingFleet fleet)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_boat_with_an_open_strike_is_shown_as_not_for_hire_with_what_releases_it()
    {
        var boats = await fleet.ItemsAsync("/api/boats?dock=old-mole");
        var tern = boats.Single(b => Text(b!["boat"]) == "tern")!;
        Assert.True(tern["notForHire"]!.GetValue<bool>());
        Assert.Equal("out", Text(tern["hire"]!["word"]));
        Assert.Contains("says fit", Text(tern["attention"]![0]!["sentence"]), StringComparison.Ordinal);
        Assert.False(boats.Single(b => Text(b!["boat"]) == "skua")!["notForHire"]!.GetValue<bool>());
        Assert.Equal(["tern"], (await fleet.ItemsAsync("/api/boats?hire=out")).Select(b => Text(b!["boat"])));
    }

    [Fact]
    public async Task One_boat_is_shown_with_its_registration_and_whether_its_finding_is_up_to_date()
    {
        var tern = await fleet.OneAsync("/api/boats/tern");
        Assert.Equal("old-mole", Text(tern["registered"]!["dock"]));
        Assert.Equal("p-skua", Text(tern["now"]!["positions"]![0]!["prop"]));
        Assert.True(tern["upToDate"]!.GetValue<bool>());
        Assert.Equal("tern", Text((await fleet.OneAsync("/api/boats/tern/finding"))["finding"]!["boat"]));
    }

    [Fact]
    public async Task Boats_are_found_by_the_beginning_of_a_name_or_an_id()
    {
        Assert.Equal(["skua"], (await fleet.ItemsAsync("/api/boats?q=SK")).Select(b => Text(b!["boat"])));
        Assert.Empty(await fleet.ItemsAsync("/api/boats?q=kua"));
        Assert.Empty(await fleet.ItemsAsync("/api/boats?q=sk&dock=new-mole"));
    }

    [Fact]
    public async Task The_due_list_of_a_day_is_by_calendar_months_and_month_end_safe()
    {
        var skua = Assert.Single(await fleet.ItemsAsync("/api/due?day=2027-03-01&boat=skua"))!;
        Assert.Equal("2027-02-28", Text(skua["dueOn"])); // six months after 31 August
        Assert.Equal(1, skua["daysOverdue"]!.GetValue<int>());
        Assert.Equal(["after_strike_inspection"], (await fleet.ItemsAsync("/api/due?kind=after_strike_inspection")).Select(d => Text(d!["kind"])));
    }

    [Fact]
    public async Task The_history_is_in_the_order_of_things_and_says_what_no_longer_counts()
    {
        var all = await fleet.ItemsAsync("/api/boats/tern/history");
        Assert.Equal(
            ["boat_registered", "engine_fitted", "prop_mounted", "trial_run", "trial_run", "strike_reported", "strike_reported", "claim_opened", "prop_removed", "prop_mounted"],
            all.Select(i => Text(i!["record"]!["fact"])));
        Assert.Equal(fleet.AmendedStrike.ToString(), Text(Assert.Single(all, i => !i!["counts"]!.GetValue<bool>())!["record"]!["entry"]!["id"]));

        var march = await fleet.ItemsAsync("/api/boats/tern/history?kind=prop_mounted&from=2026-03-05&to=2026-03-05");
        Assert.Equal("p-skua", Text(Assert.Single(march)!["record"]!["prop"]));
        Assert.Equal(["engine_registered", "engine_installed"], (await fleet.ItemsAsync("/api/engines/e-tern/history")).Select(i => Text(i!["record"]!["fact"])));
        Assert.Equal(["prop_registered", "prop_issued", "prop_issued"], (await fleet.ItemsAsync("/api/props/p-skua/history")).Select(i => Text(i!["record"]!["fact"])));
    }

    [Fact]
    public async Task An_engine_is_shown_with_its_manual_its_stays_and_its_meter()
    {
        var line = (await fleet.ItemsAsync("/api/engines?q=e-te")).Single()!;
        Assert.Equal(("Skerry 50", "tern"), (Text(line["model"]), Text(line["boat"])));
        Assert.Empty(await fleet.ItemsAsync("/api/engines?dock=new-mole"));

        var engine = await fleet.OneAsync("/api/engines/e-tern");
        Assert.Equal("2026-01-01", Text(Assert.Single(engine["stays"]!.AsArray())!["from"]));
        Assert.Equal([90, 90, 100, 120, 130], engine["meter"]!.AsArray().Select(m => m!["hours"]!.GetValue<double>()));
    }

    [Fact]
    public async Task Mountings_are_listed_whether_they_ended_or_not_and_an_ended_one_keeps_its_wear()
    {
        var ended = Assert.Single(await fleet.ItemsAsync("/api/mountings?boat=tern&open=false"))!;
        Assert.Equal((fleet.FirstMounting.ToString(), "2026-03-05"), (Text(ended["mounting"]), Text(ended["offOn"])));
        Assert.Equal(["skua", "tern"], (await fleet.ItemsAsync("/api/mountings?prop=p-skua&open=true")).Select(m => Text(m!["boat"])));

        var mounting = await fleet.OneAsync($"/api/mountings/{fleet.FirstMounting}");
        Assert.Equal(2, mounting["wear"]!["trials"]!.AsArray().Count);
        Assert.True(mounting["sheet"]!["newCotterPin"]!.GetValue<bool>());
    }

    [Fact]
    public async Task A_question_that_two_boats_share_is_asked_of_both()
    {
        var asked = await fleet.ItemsAsync("/api/contradictions?kind=prop_in_two_places");
        Assert.Equal(["skua", "tern"], asked.Select(c => Text(c!["boat"])));
        Assert.Equal(Text(asked[0]!["question"]), Text(asked[1]!["question"]));
        Assert.Single(await fleet.ItemsAsync("/api/contradictions?kind=prop_in_two_places&boat=tern"));
        Assert.Empty(await fleet.ItemsAsync("/api/contradictions?dock=new-mole"));
    }

    [Fact]
    public async Task A_prop_is_shown_with_where_it_is_and_what_it_ran()
    {
        Assert.Equal(["p-spare", "p-tern"], (await fleet.ItemsAsync("/api/props?standing=spare")).Select(p => Text(p!["prop"])));
        Assert.Equal(["p-tern"], (await fleet.ItemsAsync("/api/props?dock=old-mole")).Select(p => Text(p!["prop"])));
        var prop = await fleet.OneAsync("/api/props/p-tern");

        // Fitted at 90, off an hour before the meter read 130.
        Assert.InRange(prop["hours"]!.GetValue<double>(), 39.9, 40);
        Assert.True(prop["hoursBridged"]!.GetValue<bool>());
        Assert.Equal("struck", Text(prop["cameOff"]!["why"]));
    }

    [Fact]
    public async Task Spares_are_held_against_a_boats_engine_and_the_boat_must_be_named()
    {
        var fits = Assert.Single(await fleet.ItemsAsync("/api/fits?boat=skua&position=single"))!["fits"]!;
        Assert.Equal("e-skua", Text(fits["engine"]));
        Assert.Equal(["p-spare", "p-tern"], fits["spares"]!.AsArray().Select(s => Text(s!["prop"])).Order(StringComparer.Ordinal));
        Assert.Empty(await fleet.ItemsAsync("/api/fits?boat=skua&position=port"));
        Assert.Contains("missing", (await fleet.RefusedAsync("/api/fits"))["boat"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Parts_claims_and_the_office_are_shown_as_told()
    {
        Assert.Equal(48, (await fleet.OneAsync("/api/parts/pin"))["total"]!.GetValue<int>());
        Assert.Equal(["pin"], (await fleet.ItemsAsync("/api/parts?dock=old-mole")).Select(p => Text(p!["part"])));
        Assert.Empty(await fleet.ItemsAsync("/api/parts?dock=new-mole"));
        Assert.Equal("hire-7", Text(Assert.Single(await fleet.ItemsAsync("/api/claims?boat=tern&state=open"))!["hire"]));
        Assert.Empty(await fleet.ItemsAsync("/api/claims?state=waived"));
        Assert.Equal("The Old Mole", Text((await fleet.OneAsync("/api/office"))["docks"]![0]!["name"]));
        Assert.Contains("six-monthly", (await fleet.OneAsync("/api/policy"))["rules"]!.AsArray().Select(r => Text(r!["id"])));
    }

    [Theory]
    [InlineData("/api/boats/nobody")]
    [InlineData("/api/boats/nobody/finding")]
    [InlineData("/api/boats/nobody/history")]
    [InlineData("/api/engines/nobody")]
    [InlineData("/api/engines/nobody/history")]
    [InlineData("/api/props/nobody")]
    [InlineData("/api/props/nobody/history")]
    [InlineData("/api/parts/nobody")]
    [InlineData("/api/fits?boat=nobody")]
    [InlineData("/api/mountings/0198a6f2-5f00-7abc-8def-0123456789ab")]
    [InlineData("/api/mountings/no-id")]
    public async Task What_nobody_has_heard_of_is_a_404_problem(string path)
    {
        using var response = await fleet.Fleet.Http.GetAsync(path, Ct);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task The_program_says_that_it_lives_and_is_ready()
    {
        Assert.Equal("live\n", await fleet.Fleet.Http.GetStringAsync("/health/live", Ct));
        Assert.Contains("\"status\":", await fleet.Fleet.Http.GetStringAsync("/health/ready", Ct), StringComparison.Ordinal); // 503 would throw
    }

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
