using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Settings;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;

namespace FleetWake.Faults.Tests;

/// <summary>The database goes away and comes back: nothing acknowledged is lost, nothing is stored twice, nobody restarts anything.</summary>
public sealed class DatabaseOutageTests : IAsyncLifetime
{
    private readonly DockRecords dock = new();
    private RestartableServer server = null!;
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        server = await RestartableServer.StartAsync(Ct);
        fleet = await RunningFleet.StartAsync(await server.NewDatabaseAsync("outage", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
    }

    public async ValueTask DisposeAsync()
    {
        await fleet.DisposeAsync();
        await server.DisposeAsync();
    }

    [Fact]
    public async Task A_record_sent_during_an_outage_is_answered_503_and_is_taken_once_when_sent_again()
    {
        await fleet.SendAsync(dock.Outfit("tern", "Tern"), Ct);
        var trial = dock.Trial("tern", "2026-02-01T10:00:00", 5600, 120);

        await server.StopAsync();
        using (var refused = await PostAsync(trial))
        {
            Assert.Equal(HttpStatusCode.ServiceUnavailable, refused.StatusCode);
            Assert.NotNull(refused.Headers.RetryAfter);
            Assert.Equal("urn:fleetwake:problem:record-unavailable", (await refused.Content.ReadFromJsonAsync<JsonObject>(Ct))!["type"]!.GetValue<string>());
        }

        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await fleet.Http.GetAsync("/health/ready", Ct)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await fleet.Http.GetAsync("/health/live", Ct)).StatusCode);

        await server.StartAgainAsync(Ct);
        await RunningFleet.UntilAsync("the record to be taken", async () =>
        {
            using var again = await PostAsync(trial);
            return again.StatusCode is HttpStatusCode.Created or HttpStatusCode.OK;
        }, Ct);
        await RunningFleet.UntilAsync("one trial in the finding", async () => await TrialsAsync() == 1, Ct);
    }

    [Fact]
    public async Task The_worker_goes_on_by_itself_after_an_outage()
    {
        await fleet.SendAsync([.. dock.Outfit("tern", "Tern"), dock.Trial("tern", "2026-02-01T10:00:00", 5600, 120)], Ct);
        await server.StopAsync();
        await Task.Delay(TimeSpan.FromSeconds(3), Ct); // long enough for daemon, finding step, mail sender and tick to run into it
        await server.StartAgainAsync(Ct);
        await RunningFleet.UntilAsync("the finding", async () => await TrialsAsync() == 1, Ct);

        await fleet.SendAsync([dock.Trial("tern", "2026-03-01T10:00:00", 5620, 140)], Ct);
        await RunningFleet.UntilAsync("the next finding", async () => await TrialsAsync() == 2, Ct);
    }

    private Task<HttpResponseMessage> PostAsync(Logbook.Entries.ICommand record) =>
        fleet.Http.PostAsJsonAsync($"/api/records/{BatchJson.Kind(record)}", BatchJson.Write(record), Ct);

    private async Task<int> TrialsAsync()
    {
        using var response = await fleet.Http.GetAsync("/api/boats/tern/finding", Ct);
        if (!response.IsSuccessStatusCode) return -1;
        var finding = await response.Content.ReadFromJsonAsync<JsonNode>(Ct);
        return finding!["finding"]!["positions"]![0]?["mounting"]?["trials"]?.AsArray().Count ?? -1;
    }
}
