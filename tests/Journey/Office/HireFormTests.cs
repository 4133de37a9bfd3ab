using System.Net;
using System.Text.RegularExpressions;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;

namespace FleetWake.Journey.Tests.Office;

/// <summary>A boat taken out of hire and put back by hand, and what keeps the pages from saying more than is known.</summary>
public sealed partial class HireFormTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new(23);
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("hire_forms", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        await SendAsync([.. dock.Outfit("linnet", "Linnet")]);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_boat_is_put_back_in_hire_by_whoever_saw_what_keeps_it()
    {
        await SendAsync(Strike("2026-03-01T16:00:00"));
        using var browser = await SignInHttp.AsAsync(fleet, Role.Operator, "desk-1");
        var page = (await browser.GetAsync("/office/boats/linnet")).Text;
        var (status, _, location) = await PutBackAsync(browser, Seen(page), Entry(page));
        Assert.Equal((HttpStatusCode.Redirect, "/office/boats/linnet"), (status, location));
        page = (await browser.GetAsync("/office/boats/linnet")).Text;
        Assert.Contains("Recorded. Nothing on record keeps it any more.", page, StringComparison.Ordinal);
        Assert.Contains("In hire", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_strike_that_came_in_meanwhile_is_not_lifted_along()
    {
        await SendAsync(Strike("2026-03-01T16:00:00"));
        using var browser = await SignInHttp.AsAsync(fleet, Role.Operator, "desk-1");
        var page = (await browser.GetAsync("/office/boats/linnet")).Text;
        await SendAsync(Strike("2026-03-02T16:00:00"));
        var (status, text, _) = await PutBackAsync(browser, Seen(page), Entry(page));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Contains("What keeps this boat has changed since you opened the page", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Back in hire (", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_second_click_on_the_same_form_is_no_mistake()
    {
        await SendAsync(Strike("2026-03-01T16:00:00"));
        using var browser = await SignInHttp.AsAsync(fleet, Role.Operator, "desk-1");
        var page = (await browser.GetAsync("/office/boats/linnet")).Text;
        await PutBackAsync(browser, Seen(page), Entry(page));
        await Task.Delay(TimeSpan.FromSeconds(1.1), Ct); // The stamp tells seconds: the second click is of another one.
        var (status, _, location) = await PutBackAsync(browser, Seen(page), Entry(page));
        Assert.Equal((HttpStatusCode.Redirect, "/office/boats/linnet"), (status, location));
        Assert.Single((await fleet.Service<FleetReading>().LogAsync(RunningFleet.Operator, "linnet", Ct))!.Facts.OfType<ReturnedToHire>());
    }

    [Fact]
    public async Task What_putting_back_does_not_lift_is_said()
    {
        await SendAsync(new Inspect(dock.At("2026-03-01T16:00:00"), "linnet", "single", "take_off", ["hub_slip"]));
        using var browser = await SignInHttp.AsAsync(fleet, Role.Mechanic, "mech-1");
        var page = (await browser.GetAsync("/office/boats/linnet")).Text;
        await PutBackAsync(browser, Seen(page), Entry(page));
        Assert.Contains("Recorded. It still does not go out:", (await browser.GetAsync("/office/boats/linnet")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_boat_whose_newest_records_are_not_counted_is_not_said_to_be_in_hire()
    {
        using var browser = await SignInHttp.AsAsync(fleet, Role.Operator, "desk-1");
        Assert.Contains("state in\"", (await browser.GetAsync("/office/boats/linnet")).Text, StringComparison.Ordinal);
        await using var source = NpgsqlDataSource.Create(fleet.Database);
        await using (var parked = source.CreateCommand(
            "insert into fleetwake.dirty_boats (operator, boat, sequence, marked_at, attempts, parked_at) values ('skerry-bay', 'linnet', 1, now(), 1, now()) on conflict do nothing"))
            await parked.ExecuteNonQueryAsync(Ct);
        foreach (var path in (string[])["/office", "/office/boats/linnet"])
        {
            var page = (await browser.GetAsync(path)).Text;
            Assert.Contains("state pending\"", page, StringComparison.Ordinal);
            Assert.DoesNotContain("state in\"", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_boat_of_which_only_work_is_known_does_not_take_the_fleet_page_down()
    {
        await SendAsync(new CleanHull(dock.At("2026-03-01T16:00:00"), "nobodys"));
        using var browser = await SignInHttp.AsAsync(fleet, Role.Operator, "desk-1");
        var (status, text, _) = await browser.GetAsync("/office");
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("nobodys", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mechanic_reads_no_money_in_the_records_of_a_boat()
    {
        await SendAsync(Strike("2026-03-01T16:00:00"), new OpenClaim(dock.At("2026-03-02T16:00:00"), "linnet", "single", "hire-77", null, 450m, "NZD", "2026-04-01"));
        using var mechanic = await SignInHttp.AsAsync(fleet, Role.Mechanic, "mech-1");
        using var desk = await SignInHttp.AsAsync(fleet, Role.Operator, "desk-1");
        Assert.Contains("Claim opened", (await desk.GetAsync("/office/boats/linnet")).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Claim opened", (await mechanic.GetAsync("/office/boats/linnet")).Text, StringComparison.Ordinal);
    }

    private ReportStrike Strike(string at) => new(dock.At(at), "linnet", "single", "rock", "bent");

    private async Task SendAsync(params ICommand[] records)
    {
        Assert.All(await fleet.SendAsync(records, Ct), r => Assert.NotEqual("refused", (string?)r!["outcome"]));
        await RunningFleet.UntilAsync("findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
    }

    private static Task<(HttpStatusCode Status, string Text, string? Location)> PutBackAsync(SignInHttp browser, string seen, string entry) =>
        browser.PostAsync("/office/boats/linnet", "/office/boats/linnet/back-in-hire", ("entry", entry), ("seen", seen), ("why", "looked_at_dock"));

    private static string Seen(string page) => SeenField().Match(page).Groups[1].Value;

    private static string Entry(string page) => EntryField().Match(page).Groups[1].Value;

    [GeneratedRegex("name=\"seen\" value=\"([^\"]+)\"")]
    private static partial Regex SeenField();

    [GeneratedRegex("name=\"entry\" value=\"([^\"]+)\"")]
    private static partial Regex EntryField();
}
