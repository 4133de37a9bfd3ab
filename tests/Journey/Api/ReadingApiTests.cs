using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Journey.Tests.Api;

/// <summary>What is read back: boats, findings, due lists and the description of the API.</summary>
public sealed class ReadingApiTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly DockRecords dock = new();
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(
            await postgres.NewDatabaseAsync("reading", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        await fleet.SendAsync(
        [
            .. dock.Outfit("tern", "Tern"), .. dock.Outfit("skua", "Skua"),
            new Inspect(dock.At("2026-08-31T16:00:00"), "skua", "single", "fit"),
            new ReportStrike(dock.At("2026-03-02T10:00:00"), "tern", "single", "rock", "bent"),
        ], Ct);
        await RunningFleet.UntilAsync("both findings", async () =>
            (await fleet.Http.GetFromJsonAsync<JsonArray>("/api/boats", Ct))!.Count == 2 && (await DueAsync("2026-12-01")).Count == 3, Ct);
    }

    public ValueTask DisposeAsync() => fleet.DisposeAsync();

    [Fact]
    public async Task A_boat_with_an_open_strike_is_shown_as_not_for_hire_with_what_releases_it()
    {
        var boats = (await fleet.Http.GetFromJsonAsync<JsonArray>("/api/boats", Ct))!;
        var tern = boats.Single(b => Text(b!["boat"]) == "tern")!;
        Assert.True(tern["notForHire"]!.GetValue<bool>());
        Assert.Contains("says fit", Text(tern["attention"]![0]!["sentence"]), StringComparison.Ordinal);
        Assert.False(boats.Single(b => Text(b!["boat"]) == "skua")!["notForHire"]!.GetValue<bool>());
    }

    [Fact]
    public async Task The_due_list_of_a_day_is_by_calendar_months_and_month_end_safe()
    {
        var skua = (await DueAsync("2027-03-01")).Single(d => Text(d!["boat"]) == "skua")!;
        Assert.Equal("2027-02-28", Text(skua["dueOn"])); // six months after 31 August
        Assert.Equal(1, skua["daysOverdue"]!.GetValue<int>());
    }

    [Fact]
    public async Task A_day_that_is_no_date_is_refused_by_name()
    {
        using var response = await fleet.Http.GetAsync("/api/due?day=tomorrow", Ct);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, response.StatusCode);
        Assert.NotNull((await response.Content.ReadFromJsonAsync<JsonObject>(Ct))!["errors"]!["day"]);
    }

    [Fact]
    public async Task A_boat_nobody_has_heard_of_is_a_404_problem()
    {
        using var response = await fleet.Http.GetAsync("/api/boats/nobody/finding", Ct);
        Assert.Equal(HttpStatusCode.NotFound, response.StatusCode);
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType!.MediaType);
    }

    [Fact]
    public async Task The_description_names_every_kind_of_record_with_its_words()
    {
        var description = (await fleet.Http.GetFromJsonAsync<JsonObject>("/openapi/v1.json", Ct))!;
        foreach (var kind in RecordKind.All) Assert.NotNull(description["paths"]!["/api/records/" + kind.Name]);
        foreach (var path in (string[])["boats", "boats/{boat}", "boats/{boat}/finding", "due"])
            Assert.NotNull(description["paths"]!["/api/" + path]!["get"]!["responses"]!["200"]!["content"]);
        Assert.NotNull(description["components"]!["schemas"]!["RefusalProblem"]!["properties"]!["errors"]);
        var severity = description["components"]!["schemas"]!["ReportStrike"]!["properties"]!["severity"]!;
        Assert.Contains("bent", severity["enum"]!.AsArray().Select(Text));
    }

    [Fact]
    public async Task The_program_says_that_it_lives_and_is_ready()
    {
        Assert.Equal("live\n", await fleet.Http.GetStringAsync("/health/live", Ct));
        Assert.Equal("ready\n", await fleet.Http.GetStringAsync("/health/ready", Ct));
    }

    private async Task<JsonArray> DueAsync(string day) => (await fleet.Http.GetFromJsonAsync<JsonArray>($"/api/due?day={day}", Ct))!;

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
