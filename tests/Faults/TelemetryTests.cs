using System.Collections.Concurrent;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using FleetWake.Web.Office;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;

namespace FleetWake.Faults.Tests;

/// <summary>What the program tells a collector, and that it tells nobody without being told to.</summary>
public sealed class TelemetryTests(PostgresFixture postgres)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_collector_that_is_named_gets_the_figures_and_the_spans_and_no_boat_or_operator()
    {
        await using var collector = await Collector.StartAsync(Ct);
        await using var workers = await Workers.StartAsync(await postgres.NewDatabaseAsync("telemetry", Ct), 0, Ct);
        (string, string)[] telling =
        [
            ("OTEL_EXPORTER_OTLP_ENDPOINT", collector.Address),
            ("OTEL_EXPORTER_OTLP_PROTOCOL", "http/protobuf"),
            ("OTEL_METRIC_EXPORT_INTERVAL", "500"),
            ("OTEL_BSP_SCHEDULE_DELAY", "500"),
            ("FLEETWAKE_URLS", "http://127.0.0.1:0"),
        ];
        using var work = new FleetProgram(workers.Connection, telling, "work");
        await work.SaysAsync("fleetwake: working", Ct);
        using var serve = new FleetProgram(workers.Connection, telling, "serve");
        await serve.SaysAsync("serving on", Ct);

        var key = await workers.Operators.MakeKeyAsync(RunningFleet.Operator, "phone", [KeyScope.Record], Ct);
        var calendar = await workers.Operators.MakeKeyAsync(RunningFleet.Operator, "calendar", [KeyScope.Calendar], Ct);
        using var http = new HttpClient { BaseAddress = new Uri(Regex.Match(serve.Output, "serving on (http://[^ ;]+)").Groups[1].Value) };
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        var batch = new JsonObject { ["device"] = "dock-1", ["records"] = new JsonArray([.. new DockRecords().Outfit("quail-77", "Quail").Select(Demo.BatchJson.Write)]) };
        using var sent = await http.PostAsJsonAsync("/api/records", batch, Ct);
        Assert.True(sent.IsSuccessStatusCode);
        Assert.True((await http.GetAsync(DueCalendar.PathOf(calendar), Ct)).IsSuccessStatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await http.GetAsync("/unsubscribe/token-of-somebody", Ct)).StatusCode);

        foreach (var name in (string[])["fleetwake.finding.duration", "fleetwake.findings", "fleetwake.daemon.lag", "fleetwake.daemon.events_behind", "fleetwake.boats.waiting", "fleetwake.boats.parked", "fleetwake.boats.oldest_wait", "fleetwake.mail.messages", "fleetwake.nodes", "assess boat", "marten.", "fleetwake.records", "/calendar/{key}/due.ics", "/unsubscribe/{token}"])
            await RunningFleet.UntilAsync(name, () => Task.FromResult(collector.Heard(name)), Ct);

        // Figures and spans travel further than the record may, and a path that holds a key opens something.
        foreach (var secret in (string[])["skerry-bay", "quail-77", calendar, "token-of-somebody"]) Assert.False(collector.Heard(secret), secret);
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

    private sealed class Collector(WebApplication app, ConcurrentQueue<string> bodies) : IAsyncDisposable
    {
        public string Address => app.Urls.First();

        public static async Task<Collector> StartAsync(CancellationToken ct)
        {
            var bodies = new ConcurrentQueue<string>();
            var builder = WebApplication.CreateSlimBuilder();
            builder.WebHost.UseUrls("http://127.0.0.1:0");
            builder.Logging.ClearProviders();
            var app = builder.Build();
            app.MapPost("/v1/{signal}", async (HttpContext http) =>
            {
                using var bytes = new MemoryStream();
                await http.Request.Body.CopyToAsync(bytes, http.RequestAborted);
                bodies.Enqueue(Encoding.Latin1.GetString(bytes.ToArray()));
            });
            await app.StartAsync(ct);
            return new Collector(app, bodies);
        }

        public bool Heard(string text) => bodies.Any(b => b.Contains(text, StringComparison.Ordinal));

        public ValueTask DisposeAsync() => app.DisposeAsync();
    }
}
