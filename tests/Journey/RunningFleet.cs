using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Hosting;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests;
using FleetWake.Settings;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Ticks;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetWake.Tests.Program;

/// <summary>The whole program in both roles on a fresh database, with one operator and a key, reached over HTTP as anybody would.</summary>
public sealed class RunningFleet : IAsyncDisposable
{
    public const string Operator = "skerry-bay";
    public const string Zone = "Pacific/Auckland";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private RunningFleet(WebApplication app, HttpClient http, string database) => (App, Http, Database) = (app, http, database);

    public WebApplication App { get; }

    /// <summary>A client that carries the operator's key.</summary>
    public HttpClient Http { get; }

    public string Database { get; }

    /// <summary>Starts it. Its fleet is fitted when a test asks for it; with <paramref name="fits"/>, whenever it is due, asked that often. Digests are asked for each second, or as <paramref name="digests"/> says.</summary>
    public static async Task<RunningFleet> StartAsync(
        string database, MailSettings mail, TimeProvider? time = null, string? templates = null, MissedRule catchUp = MissedRule.Latest, TimeSpan? fits = null, Uri? publicUrl = null, TimeSpan? digests = null, CancellationToken ct = default)
    {
        await using (var source = NpgsqlDataSource.Create(database)) await FleetDatabase.SchemaAsync(source, ct);
        var settings = new FleetSettings(database, "http://127.0.0.1:0", mail, templates, publicUrl) { CatchUp = catchUp };
        var app = FleetHost.Build(settings, database, Roles.Serve | Roles.Work, time ?? TimeProvider.System, new TickSettings(digests ?? TimeSpan.FromSeconds(1), fits ?? TimeSpan.FromHours(1)), quiet: true);
        await app.StartAsync(ct);
        var operators = app.Services.GetRequiredService<FleetOperators>();
        await operators.OpenAsync(Operator, "Skerry Bay Hire", Zone, ct);
        var key = await operators.MakeKeyAsync(Operator, "test", [KeyScope.Record, KeyScope.Read, KeyScope.Bounce], ct);
        var http = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
        http.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
        return new RunningFleet(app, http, database);
    }

    public T Service<T>()
        where T : notnull => App.Services.GetRequiredService<T>();

    /// <summary>Subscribes an address to the weekly digest; the next tick issues it.</summary>
    public async Task SubscribeAsync(string address, CancellationToken ct)
    {
        var operators = Service<FleetOperators>();
        await operators.SubscribeAsync((await operators.FindAsync(Operator, ct))!, address, WeeklyWear.Digest, ct);
    }

    /// <summary>Sends a batch and returns its results.</summary>
    public async Task<JsonArray> SendAsync(IEnumerable<ICommand> records, CancellationToken ct, string device = "dock-1")
    {
        var batch = new JsonObject { ["device"] = device, ["records"] = new JsonArray([.. records.Select(BatchJson.Write)]) };
        using var response = await Http.PostAsJsonAsync("/api/records", batch, ct);
        response.EnsureSuccessStatusCode();
        return (await response.Content.ReadFromJsonAsync<JsonObject>(ct))!["results"]!.AsArray();
    }

    /// <summary>Waits until something holds, by asking again and again; fails with what was waited for.</summary>
    public static async Task UntilAsync(string what, Func<Task<bool>> holds, CancellationToken ct, TimeSpan? within = null)
    {
        var patience = within ?? Patience;
        var clock = System.Diagnostics.Stopwatch.StartNew();
        while (!await holds())
        {
            Assert.True(clock.Elapsed < patience, $"waited {patience.TotalSeconds:0} s in vain for {what}");
            await Task.Delay(50, ct);
        }
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await FleetHost.EndAsync(App);
    }
}
