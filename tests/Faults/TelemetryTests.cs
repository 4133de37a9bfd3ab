using System.Collections.Concurrent;
using System.Text;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace FleetWake.Faults.Tests;

/// <summary>What a worker tells a collector, and that it tells nobody without being told to.</summary>
public sealed class TelemetryTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_collector_that_is_named_gets_the_figures_and_the_spans_and_no_boat_or_operator()
    {
        await using var collector = await Collector.StartAsync(Ct);
        await using var workers = await Workers.StartAsync(await postgres.NewDatabaseAsync("telemetry", Ct), 0, Ct);
        using var work = new FleetProgram(
            workers.Connection,
            [
                ("OTEL_EXPORTER_OTLP_ENDPOINT", collector.Address),
                ("OTEL_EXPORTER_OTLP_PROTOCOL", "http/protobuf"),
                ("OTEL_METRIC_EXPORT_INTERVAL", "500"),
                ("OTEL_BSP_SCHEDULE_DELAY", "500"),
            ],
            "work");
        await work.SaysAsync("fleetwake: working", Ct);
        await workers.TakeAsync(new DockRecords().Outfit("tern", "Tern"), Ct);
        foreach (var name in (string[])["fleetwake.finding.duration", "fleetwake.findings", "fleetwake.daemon.lag", "fleetwake.daemon.events_behind", "fleetwake.boats.waiting", "fleetwake.boats.parked", "fleetwake.boats.oldest_wait", "fleetwake.mail.messages", "fleetwake.nodes", "assess boat", "marten."])
            await RunningFleet.UntilAsync(name, () => Task.FromResult(collector.Heard(name)), Ct);

        // Names of operators and boats stand in no label of ours; Marten's own spans name streams' tenants, and stay off.
        Assert.False(collector.HeardInMetrics("skerry-bay"));
        Assert.False(collector.HeardInMetrics("tern"));
    }

    [Fact]
    public async Task A_collector_that_is_away_stops_nothing()
    {
        await using var workers = await Workers.StartAsync(await postgres.NewDatabaseAsync("deaf", Ct), 0, Ct);
        using var work = new FleetProgram(workers.Connection, [("OTEL_EXPORTER_OTLP_ENDPOINT", "http://127.0.0.1:1")], "work");
        await work.SaysAsync("fleetwake: working", Ct);
        await workers.TakeAsync([.. new DockRecords().Outfit("tern", "Tern")], Ct);
        await RunningFleet.UntilAsync("the finding", async () => await workers.TrialsAsync("tern", Ct) == 0, Ct);
    }

    private sealed class Collector(WebApplication app, ConcurrentQueue<(string Path, string Body)> bodies) : IAsyncDisposable
    {
        public string Address => app.Urls.First();

        public static async Task<Collector> StartAsync(CancellationToken ct)
        {
            var bodies = new ConcurrentQueue<(string, string)>();
            var builder = WebApplication.CreateSlimBuilder();
            builder.WebHost.UseUrls("http://127.0.0.1:0");
            builder.Logging.ClearProviders();
            var app = builder.Build();
            app.MapPost("/v1/{signal}", async (HttpContext http) =>
            {
                using var bytes = new MemoryStream();
                await http.Request.Body.CopyToAsync(bytes, http.RequestAborted);
                bodies.Enqueue((http.Request.Path, Encoding.Latin1.GetString(bytes.ToArray())));
            });
            await app.StartAsync(ct);
            return new Collector(app, bodies);
        }

        public bool Heard(string text) => bodies.Any(b => b.Body.Contains(text, StringComparison.Ordinal));

        public bool HeardInMetrics(string text) => bodies.Any(b => b.Path == "/v1/metrics" && b.Body.Contains(text, StringComparison.Ordinal));

        public ValueTask DisposeAsync() => app.DisposeAsync();
    }
}
