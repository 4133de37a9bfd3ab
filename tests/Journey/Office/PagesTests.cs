using System.Net;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Frame;

namespace FleetWake.Journey.Tests.Office;

/// <summary>What the office's pages say and take, over HTTP alone.</summary>
public sealed class PagesTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new(42);
    private RunningFleet fleet = null!;
    private SignInHttp office = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("office_pages", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        office = await SignInHttp.AsAsync(fleet, Role.Manager, "office-1");
        await SendAsync([new OpenDock(dock.At("2026-01-01T08:00:00"), "old-mole", "The Old Mole", RunningFleet.Zone, "salt", "rock"), .. dock.Outfit("tern", "Tern")]);
    }

    public async ValueTask DisposeAsync()
    {
        office.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task An_address_of_nothing_answers_a_person_with_a_page_and_a_program_with_json()
    {
        foreach (var path in (string[])["/office/nothing", "/office/claims/xyz/more", "/office/due/take", "/nowhere"])
        {
            var seen = await office.SeeAsync(path);
            Assert.Equal(HttpStatusCode.NotFound, seen.Status);
            Assert.Contains("<h1>Not here</h1>", seen.Text, StringComparison.Ordinal);
        }

        Assert.Contains("Skerry Bay Hire", (await office.SeeAsync("/office/nothing")).Text, StringComparison.Ordinal);
        Assert.Contains("openapi", (await office.GetAsync("/office/nothing")).Text, StringComparison.Ordinal);
        Assert.Contains("openapi", (await office.SeeAsync("/api/nothing")).Text, StringComparison.Ordinal);
        using var stranger = new SignInHttp(fleet);
        Assert.DoesNotContain("Skerry Bay Hire", (await stranger.SeeAsync("/office/nothing")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_bare_address_leads_a_person_to_the_office_and_tells_a_program_of_the_api()
    {
        Assert.Equal("/office", (await office.SeeAsync("/")).Location);
        Assert.Contains("/openapi/v1.json", (await office.GetAsync("/")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_not_recorded_is_said_first_and_leads_to_the_field()
    {
        var sent = await office.PostAsync("/office/spares", "/office/spares/counted", ("part", "pin"), ("dock", "old-mole"), ("quantity", "many"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, sent.Status);
        Assert.Contains("<title>Not recorded: Spares", sent.Text, StringComparison.Ordinal);
        Assert.Contains("<a href=\"#counted-quantity\">Pieces: ", sent.Text, StringComparison.Ordinal);
        Assert.Contains("id=\"counted-quantity\" name=\"quantity\" autofocus", sent.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("name=\"part\" autofocus", sent.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_boat_its_engine_and_a_prop_are_registered_at_the_office()
    {
        var boat = await office.PostAsync("/office/boats/new", "/office/boats/new", ("name", "Écume & Co"), ("boat", ""), ("dock", "old-mole"), ("water", "salt"), ("positions", "port starboard"));
        Assert.Equal("/office/boats/ecume-co?done=registered", boat.Location);
        var page = (await office.GetAsync(boat.Location!)).Text;
        Assert.Contains("the boat is registered", page, StringComparison.Ordinal);
        Assert.Contains("The Old Mole", page, StringComparison.Ordinal);

        var wrong = await office.PostAsync(
            "/office/boats/ecume-co", "/office/boats/ecume-co/engine", ("position", "port"), ("engine", "e 9"), ("model", "Skerry 60"), ("bandLowRpm", "6000"), ("bandHighRpm", "5000"), ("gearRatio", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        foreach (var field in (string[])["engine", "bandHighRpm", "gearRatio"]) Assert.Contains($"href=\"#engine-{field}\"", wrong.Text, StringComparison.Ordinal);

        var engine = await office.PostAsync(
            "/office/boats/ecume-co", "/office/boats/ecume-co/engine",
            ("position", "port"), ("engine", "e-9"), ("model", "Skerry 60"), ("bandLowRpm", "5000"), ("bandHighRpm", "6000"), ("gearRatio", "2.08"), ("nutTorque", "34"), ("nutTorqueUnit", "newton_metre"), ("hours", "12"));
        Assert.Equal("/office/boats/ecume-co?done=engine", engine.Location);
        Assert.Contains("Skerry 60", (await office.GetAsync("/office/boats/ecume-co")).Text, StringComparison.Ordinal);

        var prop = await office.PostAsync(
            "/office/props/new", "/office/props/new", ("prop", "n-1"), ("diameterInches", "11.5"), ("pitchInches", "13"), ("blades", "3"), ("material", "aluminium"), ("rotation", "right"), ("condition", "new"), ("dock", "old-mole"));
        Assert.Equal("/office/props/n-1?done=prop-new", prop.Location);
        var lies = (await office.GetAsync("/office/props/n-1")).Text;
        Assert.Contains("The Old Mole", lies, StringComparison.Ordinal);
        Assert.Contains("11.5 × 13", WebUtility.HtmlDecode(lies), StringComparison.Ordinal);
        Assert.Contains("is on record already", WebUtility.HtmlDecode((await office.PostAsync("/office/props/new", "/office/props/new", ("prop", "n-1"))).Text), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_boat_of_which_only_records_came_is_registered_on_its_own_page()
    {
        await fleet.SendAsync([dock.Trial("stray", "2026-02-01T10:00:00", 5500, 110)], Ct);
        await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        Assert.Contains("action=\"/office/boats/stray/registered\"", (await office.GetAsync("/office/boats/stray")).Text, StringComparison.Ordinal);
        var sent = await office.PostAsync("/office/boats/stray", "/office/boats/stray/registered", ("name", "Stray"), ("dock", "old-mole"), ("water", "salt"), ("positions", "single"));
        Assert.Equal("/office/boats/stray?done=registered", sent.Location);
        Assert.DoesNotContain("it is not registered yet", (await office.GetAsync(sent.Location!)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_boat_is_laid_up_put_out_again_and_given_another_dock()
    {
        await SendAsync([new OpenDock(dock.At("2026-01-01T08:00:00"), "new-mole", "The New Mole", "Europe/Oslo", "fresh", "sand")]);
        Assert.Equal("/office/boats/tern?done=laid-up", (await office.PostAsync("/office/boats/tern", "/office/boats/tern/laid-up", ("relaunchOn", ""))).Location);
        Assert.Contains("Laid up", (await office.GetAsync("/office/boats/tern")).Text, StringComparison.Ordinal);
        Assert.Equal("/office/boats/tern?done=relaunched", (await office.PostAsync("/office/boats/tern", "/office/boats/tern/relaunched")).Location);
        Assert.Equal("/office/boats/tern?done=rehomed", (await office.PostAsync("/office/boats/tern", "/office/boats/tern/rehomed", ("dock", "new-mole"))).Location);
        var card = (await fleet.Service<FleetReading>().FindingAsync(RunningFleet.Operator, "tern", Ct))!.Finding.Registered!;
        Assert.Equal(("new-mole", "Europe/Oslo"), (card.Dock, card.DockZone));
        using var mechanic = await SignInHttp.AsAsync(fleet, Role.Mechanic, "mech-1");
        var seen = (await mechanic.GetAsync("/office/boats/tern")).Text;
        Assert.Contains("/office/boats/tern/laid-up", seen, StringComparison.Ordinal);
        Assert.DoesNotContain("/office/boats/tern/rehomed", seen, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_pitch_is_advised_while_the_hub_slips_and_the_store_page_says_what_comes_first()
    {
        for (var i = 0; i < 8; i++) await fleet.SendAsync([dock.Trial("tern", $"2026-0{1 + i}-20T10:00:00", 5650 + (70 * i), 100 + (25 * i))], Ct);
        await SendAsync([]);
        Assert.Contains("is advised", await PitchAsync(), StringComparison.Ordinal);
        var spares = WebUtility.HtmlDecode((await office.GetAsync("/office/spares")).Text);
        Assert.Contains("Boats outside their band, or about to leave it", spares, StringComparison.Ordinal);
        Assert.Contains("none lies in store: order it", spares, StringComparison.Ordinal);

        await SendAsync([new Inspect(dock.At("2026-09-01T10:00:00"), "tern", "single", "take_off", ["hub_slip"])]);
        var advice = await PitchAsync();
        Assert.Contains("No pitch is advised before this is settled: the hub slips", advice, StringComparison.Ordinal);
        Assert.DoesNotContain("The fitted pitch stays on", advice, StringComparison.Ordinal);
        Assert.DoesNotContain(">advised<", advice, StringComparison.Ordinal);
        Assert.Contains("first settle: the hub slips", WebUtility.HtmlDecode((await office.GetAsync("/office/spares")).Text), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_duty_that_was_taken_is_given_back()
    {
        await SendAsync([new ReportStrike(dock.At("2026-03-02T16:00:00"), "tern", "single", "rock", "bent")]);
        await office.PostAsync("/office/due", "/office/due/take", ("take", "tern|after-strike|single"));
        Assert.Contains("Taken by you", (await office.GetAsync("/office/due")).Text, StringComparison.Ordinal);
        await office.PostAsync("/office/due", "/office/due/give-back", ("take", "tern|after-strike|single"));
        Assert.DoesNotContain("Taken by you", (await office.GetAsync("/office/due")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Hours_that_go_back_are_asked_about_once_and_stand_in_the_line_of_the_record()
    {
        await SendAsync([new SetInspectionRule(dock.At("2026-01-01T08:00:00"), "grease", "grease the shaft", "interval", "duty_done", 1), new ReadHours(dock.At("2026-02-05T09:00:00"), "e-tern", 420.1)]);
        (string, string)[] typed = [("boat", "tern"), ("rule", "grease"), ("position", "single"), ("hours", "1")];
        const string Form = "/office/due/done?boat=tern&rule=grease&position=single";
        var asked = await office.PostAsync(Form, "/office/due/done", typed);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.Status);
        Assert.Contains("The last reading was 420.1 h: is 1 right?", asked.Text, StringComparison.Ordinal);
        Assert.Contains("name=\"sure\"", asked.Text, StringComparison.Ordinal);
        Assert.Equal("/office/due", (await office.PostAsync(Form, "/office/due/done", [.. typed, ("sure", "yes")])).Location);
        Assert.Contains("Duty done: grease the shaft, 1 h", (await office.GetAsync("/office/boats/tern")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_prop_that_is_in_two_places_says_so_and_a_new_shop_is_called_by_its_name()
    {
        await office.PostAsync("/office/props/p-tern", "/office/props/p-tern/stored", ("dock", "old-mole"));
        Assert.Contains("it is in two places", (await office.GetAsync("/office/props/p-tern")).Text, StringComparison.Ordinal);
        Assert.Contains("record that it came off before", (await office.GetAsync("/office/props/p-tern")).Text, StringComparison.Ordinal);
        await office.PostAsync("/office/props/p-tern", "/office/props/p-tern/to-shop", ("shop", "Tarn Props & Co"), ("wish", "repitch"));
        Assert.Contains("tarn-props-co", (await office.GetAsync("/office/props/p-tern")).Text, StringComparison.Ordinal);
    }

    private async Task<string> PitchAsync()
    {
        var page = (await office.GetAsync("/office/boats/tern")).Text;
        var from = page.IndexOf("<details class=\"advice\">", StringComparison.Ordinal);
        Assert.True(from > 0, "no advice on pitch");
        return WebUtility.HtmlDecode(page[from..page.IndexOf("</details>", from, StringComparison.Ordinal)]);
    }

    private async Task SendAsync(IReadOnlyList<ICommand> records)
    {
        if (records.Count > 0) Assert.DoesNotContain(await fleet.SendAsync(records, Ct), r => (string?)r!["outcome"] == "refused");
        await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }
}
