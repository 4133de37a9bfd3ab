using System.Diagnostics;
using FleetWake.Hosting;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Records;
using FleetWake.Store.Schema;
using FleetWake.Store.Servers;
using FleetWake.Ticks;
using FleetWake.Web.SignIn;
using Marten;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetWake.Benchmarks.Pages;

/// <summary>
/// How long the whole program takes to answer for a fleet of a thousand boats: HTTP in this process's own loopback, PostgreSQL
/// beside it, one request after another. What a client waits for is a little more than what the server takes.
/// </summary>
internal static class PageTimes
{
    private const string Operator = "skerry-bay";
    private const int Boats = 1000;
    private const int Chunk = 500;
    private const int Requests = 200;

    internal static async Task<int> RunAsync(TextWriter output)
    {
        var time = TimeProvider.System;
        await using var server = await DatabaseServer.OpenAsync(new LocalServerOptions(DataFolder: null, Durable: false), _ => { }, time, default);
        await server.CreateDatabaseAsync("pages");
        var database = server.ConnectionString("pages");
        await using (var source = NpgsqlDataSource.Create(database)) await SchemaSteps.ApplyAsync(source, default);
        var settings = new FleetSettings(database, "http://127.0.0.1:0", new MailSettings("a@b.example", Path.GetTempPath(), null), null, null);
        var app = FleetHost.Build(settings, database, Roles.Serve | Roles.Work, time, new TickSettings(TimeSpan.FromMinutes(5), TimeSpan.FromHours(1)), quiet: true);
        await app.StartAsync();
        try
        {
            var operators = app.Services.GetRequiredService<FleetOperators>();
            await operators.OpenAsync(Operator, "Skerry Bay Hire", ThousandBoats.Zone, default);
            await FillAsync(app.Services, time, output);

            using var api = new HttpClient { BaseAddress = new Uri(app.Urls.First()) };
            api.DefaultRequestHeaders.Authorization = new("Bearer", await operators.MakeKeyAsync(Operator, "pages", [KeyScope.Read], default));
            using var handler = new SocketsHttpHandler { UseCookies = false };
            using var person = new HttpClient(handler) { BaseAddress = new Uri(app.Urls.First()) };
            person.DefaultRequestHeaders.Add("Cookie", $"fleetwake={await SessionAsync(app.Services)}");

            await SayAsync(output, person, "/office", "fleet page, every boat");
            await SayAsync(output, person, "/office?dock=old-mole", "fleet page, one dock");
            await SayAsync(output, person, "/office/due", "due page");
            await SayAsync(output, person, "/office/boats/boat-0500", "boat page");
            await SayAsync(output, api, "/api/boats?limit=200", "api/boats, a page of 200");
            await SayAsync(output, api, "/api/due", "api/due");
            return 0;
        }
        finally
        {
            await FleetHost.EndAsync(app);
        }
    }

    private static async Task FillAsync(IServiceProvider services, TimeProvider time, TextWriter output)
    {
        var begun = Stopwatch.GetTimestamp();
        var bulk = new BulkRecorder(services.GetRequiredService<IDocumentStore>(), Operator);
        var records = 0;
        foreach (var chunk in ThousandBoats.Records(Boats).Chunk(Chunk))
        {
            var answers = await bulk.TakeAsync([.. chunk.Select(c => new Submission(KindOf(c), c, new Arrival("pages", time.GetUtcNow(), null)))], default);
            if (answers.FirstOrDefault(a => a.Outcome is Outcome.Refused or Outcome.Conflict) is { } refused) throw new InvalidOperationException(string.Join("; ", refused.Refusals));
            records += chunk.Length;
        }

        await output.WriteLineAsync($"{Boats} boats, {records} records taken in {Stopwatch.GetElapsedTime(begun).TotalSeconds:0} s");
        var reading = services.GetRequiredService<FleetReading>();
        while (!await reading.UpToDateAsync(default)) await Task.Delay(200);
        await output.WriteLineAsync($"all assessed {Stopwatch.GetElapsedTime(begun).TotalSeconds:0} s after the first record");
    }

    private static async Task<string> SessionAsync(IServiceProvider services)
    {
        var person = new PersonCard(PersonCard.KeyOf(Operator, "manager"), Operator, "manager", "Manager", null, Role.Manager);
        await using (var session = services.GetRequiredService<IDocumentStore>().LightweightSession())
        {
            session.Store(person);
            await session.SaveChangesAsync();
        }

        return await services.GetRequiredService<FleetSessions>().BeginAsync(person, default);
    }

    private static async Task SayAsync(TextWriter output, HttpClient client, string path, string what)
    {
        var begun = Stopwatch.GetTimestamp();
        var first = await client.GetByteArrayAsync(path);
        var cold = Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
        for (var i = 0; i < 20; i++) await client.GetByteArrayAsync(path);
        var times = new double[Requests];
        for (var i = 0; i < Requests; i++)
        {
            begun = Stopwatch.GetTimestamp();
            await client.GetByteArrayAsync(path);
            times[i] = Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
        }

        Array.Sort(times);
        await output.WriteLineAsync($"{what}: first {cold:0} ms, then median {times[Requests / 2]:0.0} ms, p95 {times[Requests * 95 / 100]:0.0} ms, worst {times[^1]:0.0} ms; {first.Length / 1024.0:0} kB");
    }

    private static RecordKind KindOf(ICommand command) => RecordKind.All.First(k => k.CommandType == command.GetType());
}
