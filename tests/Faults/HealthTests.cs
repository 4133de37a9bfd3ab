using System.Net;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;

namespace FleetWake.Faults.Tests;

/// <summary>The probes of a worker say what is wrong, and with which code.</summary>
public sealed class HealthTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_worker_says_that_it_lives_is_ready_and_what_is_wrong()
    {
        var connection = await postgres.NewDatabaseAsync("health", Ct);
        await using var workers = await Workers.StartAsync(connection, 1, Ct);
        var address = Regex.Match(workers.Programs[0].Output, "health at (http://[^ ;]+)/health/ready").Groups[1].Value;
        using var http = new HttpClient { BaseAddress = new Uri(address) };
        Assert.Equal("live\n", await http.GetStringAsync("/health/live", Ct));
        await StatusAsync(http, "ready", HttpStatusCode.OK);

        await RunAsync(connection, "insert into fleetwake.dirty_boats values ('skerry-bay', 'tern', 1, now(), 5, null, now(), 'it broke')");
        var degraded = await StatusAsync(http, "degraded", HttpStatusCode.OK);
        Assert.Contains("1 boats could not be assessed", degraded, StringComparison.Ordinal);
        Assert.DoesNotContain("tern", degraded, StringComparison.Ordinal);

        await RunAsync(connection, "insert into fleetwake.nodes values ('ghost', 'work', '0', now() - interval '1 day', now() - interval '1 day')");

        // The answer before holds for two seconds.
        await RunningFleet.UntilAsync("the ghost", async () => (await StatusAsync(http, "degraded", HttpStatusCode.OK)).Contains("ghost", StringComparison.Ordinal), Ct);

        await RunAsync(connection, "alter table fleetwake.dirty_boats rename to elsewhere");
        Assert.Contains("fleetwake schema", await StatusAsync(http, "not_ready", HttpStatusCode.ServiceUnavailable), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_api_without_any_worker_says_so()
    {
        var connection = await postgres.NewDatabaseAsync("alone", Ct);
        using var serve = new FleetProgram(connection, [("FLEETWAKE_URLS", "http://127.0.0.1:0")], "serve", "--apply-schema");
        await serve.SaysAsync("serving on", Ct);
        using var http = new HttpClient { BaseAddress = new Uri(Regex.Match(serve.Output, "serving on (http://[^ ;]+)").Groups[1].Value) };
        Assert.Contains("no work node", await StatusAsync(http, "degraded", HttpStatusCode.OK), StringComparison.Ordinal);

        // Through a proxy, on this machine too, nobody is told more than the status.
        using var far = new HttpRequestMessage(HttpMethod.Get, "/health/ready") { Headers = { { "X-Forwarded-For", "203.0.113.7" } } };
        using var told = await http.SendAsync(far, Ct);
        Assert.Equal("{\"status\":\"degraded\"}", await told.Content.ReadAsStringAsync(Ct));
    }

    [Fact]
    public async Task Probes_of_a_database_that_crawls_leave_one_query_there_and_not_for_long()
    {
        var connection = await postgres.NewDatabaseAsync("crawl", Ct);
        using var serve = new FleetProgram(connection, [("FLEETWAKE_URLS", "http://127.0.0.1:0")], "serve", "--apply-schema");
        await serve.SaysAsync("serving on", Ct);
        using var http = new HttpClient { BaseAddress = new Uri(Regex.Match(serve.Output, "serving on (http://[^ ;]+)").Groups[1].Value) };
        await using var source = NpgsqlDataSource.Create(connection);
        await using var held = await source.OpenConnectionAsync(Ct);
        await using var transaction = await held.BeginTransactionAsync(Ct);
        await using (var locking = new NpgsqlCommand("lock table fleetwake.outgoing_mail in access exclusive mode", held)) await locking.ExecuteNonQueryAsync(Ct);

        var probes = Enumerable.Range(0, 10).Select(_ => http.GetAsync("/health/ready", Ct)).ToList();
        await RunningFleet.UntilAsync("a probe's query", async () => await WaitingAsync(source) > 0, Ct);
        while (!probes.TrueForAll(p => p.IsCompleted))
        {
            Assert.Equal(1, Math.Max(1, await WaitingAsync(source)));
            await Task.Delay(100, Ct);
        }

        foreach (var probe in probes) Assert.Equal(HttpStatusCode.ServiceUnavailable, (await probe).StatusCode);
        await Task.Delay(TimeSpan.FromSeconds(3), Ct); // Npgsql gives a query that is broken off two seconds.
        Assert.Equal(0, await WaitingAsync(source));
    }

    [Fact]
    public async Task An_address_of_the_probes_that_is_taken_is_told_with_the_setting_that_mends_it()
    {
        var connection = await postgres.NewDatabaseAsync("taken", Ct);
        using var listener = new System.Net.Sockets.TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var taken = $"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}";
        using var work = new FleetProgram(connection, [("FLEETWAKE_HEALTH_URLS", taken)], "work", "--apply-schema");
        Assert.Equal(1, await work.EndAsync(Ct));
        Assert.Contains($"{taken} is taken", work.Output, StringComparison.Ordinal);
        Assert.Contains("FLEETWAKE_HEALTH_URLS", work.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", work.Output, StringComparison.Ordinal);
    }

    private static async Task<string> StatusAsync(HttpClient http, string status, HttpStatusCode code)
    {
        var said = "";
        await RunningFleet.UntilAsync($"\"{status}\"", async () =>
        {
            using var response = await http.GetAsync("/health/ready", Ct);
            var answer = await response.Content.ReadFromJsonAsync<JsonObject>(Ct);
            said = answer!.ToJsonString();
            return answer["status"]!.GetValue<string>() == status && response.StatusCode == code;
        }, Ct);
        return System.Text.RegularExpressions.Regex.Unescape(said);
    }

    private static async Task<long> WaitingAsync(NpgsqlDataSource source)
    {
        await using var command = source.CreateCommand("select count(*) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock'");
        return (long)(await command.ExecuteScalarAsync(Ct))!;
    }

    private static async Task RunAsync(string connection, string sql)
    {
        await using var source = NpgsqlDataSource.Create(connection);
        await using var command = source.CreateCommand(sql);
        await command.ExecuteNonQueryAsync(Ct);
    }
}
