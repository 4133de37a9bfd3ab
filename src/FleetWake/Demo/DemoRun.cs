using System.Diagnostics;
using FleetWake.Commands;
using FleetWake.Hosting;
using FleetWake.Reports.Digests;
using FleetWake.Settings;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using FleetWake.Store.Servers;
using FleetWake.Ticks;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;

namespace FleetWake.Demo;

/// <summary>Shows the whole way on an invented fleet: records in by the public API, daemon, findings, digest, mail.</summary>
/// <param name="Out">Folder that the mail goes to.</param>
/// <param name="Once">Stop when the digest is out.</param>
public sealed record DemoRun(string Out, bool Once)
{
    private const string OperatorId = "skerry-bay";
    private const string ManagerAddress = "manager@skerry-bay.example";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Runs the demo; 0 when all went well.</summary>
    public async Task<int> RunAsync(CancellationToken ct)
    {
        Directory.CreateDirectory(Out);
        var time = TimeProvider.System;
        var clock = Stopwatch.StartNew();
        await using var server = await DatabaseServer.OpenAsync(new LocalServerOptions(DataFolder: null, Durable: true), Say, time, ct);
        Say(server.Source.ToString());
        var name = $"fleetwake_demo_{Environment.ProcessId}_{time.GetUtcNow():yyyyMMddHHmmss}";
        await server.CreateDatabaseAsync(name, ct: ct);
        try
        {
            return await WithDatabaseAsync(server.ConnectionString(name), clock, time, ct);
        }
        finally
        {
            NpgsqlConnection.ClearAllPools();
            if (!server.IsOwn) await server.DropDatabaseAsync(name, CancellationToken.None);
        }
    }

    private async Task<int> WithDatabaseAsync(string database, Stopwatch clock, TimeProvider time, CancellationToken ct)
    {
        await using (var source = NpgsqlDataSource.Create(database)) await SchemaSteps.ApplyAsync(source, ct);
        var asked = FleetSettings.FromEnvironment();
        var settings = asked with { Urls = Once || Taken(asked.Urls) ? "http://127.0.0.1:0" : asked.Urls, Mail = asked.Mail with { Folder = Out, Smtp = null } };
        var app = FleetHost.Build(settings, database, Roles.Serve | Roles.Work, time, new TickSettings(TimeSpan.FromSeconds(1), Fit: TimeSpan.FromHours(1)), quiet: true);
        await FleetHost.BeginAsync(app, settings, Roles.Serve | Roles.Work, ct);
        try
        {
            var totals = await ShowAsync(app, clock, time, ct);
            if (!Once) await StayAsync(app, database, ct);
            Console.WriteLine($"demo: boats {totals.Boats}, records {totals.Records}, findings {totals.Findings}, digests {totals.Digests}, mail {Out}");
            return 0;
        }
        finally
        {
            await FleetHost.EndAsync(app);
        }
    }

    private async Task<Totals> ShowAsync(WebApplication app, Stopwatch clock, TimeProvider time, CancellationToken ct)
    {
        var operators = app.Services.GetRequiredService<FleetOperators>();
        var reading = app.Services.GetRequiredService<FleetReading>();
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(DockCalendar.ZoneName)).DateTime);
        var fleet = InventedFleet.Write(today);

        await operators.OpenAsync(OperatorId, fleet.OperatorName, fleet.Zone, ct);
        var key = await operators.MakeKeyAsync(OperatorId, "demo", [KeyScope.Record, KeyScope.Read], ct);
        var address = app.Urls.First();
        Say($"{fleet.OperatorName}: {fleet.Boats} boats and two years of records, all invented");

        using var dock = new DemoDock(address, key, time);
        var records = await dock.SendAsync(fleet, Say, ct);
        Say($"records taken: {records} ({clock.Elapsed.TotalSeconds:0} s since start)");

        await UntilAsync("the record", async () => await reading.UpToDateAsync(ct), ct);
        var card = await OperatorCommand.NeedAsync(operators, OperatorId, ct);
        var fit = await app.Services.GetRequiredService<FleetFitStep>().FitAsync(card, FitWish.Now, ct);
        Say($"fleet prior {fit.Newest?.Number}: what {fit.Newest?.Boats} boats and {fit.Newest?.Trials} trials have shown ({clock.Elapsed.TotalSeconds:0} s)");

        await UntilAsync("findings", async () => await reading.UpToDateAsync(ct), ct);
        var findings = await reading.FindingsAsync(OperatorId, ct);
        Say($"findings: {findings.Count} boats assessed, {findings.Count(f => f.Finding.Registered is null)} of them not registered: its records are held");

        await operators.SubscribeAsync(card, ManagerAddress, WeeklyWear.Digest, ct);
        var ledger = app.Services.GetRequiredService<MailLedger>();
        await UntilAsync("the digest", async () => (await ledger.CountsAsync(ct)).GetValueOrDefault(MailState.Sent) > 0, ct);
        var digests = (await ledger.CountsAsync(ct)).Values.Sum();
        Say($"digest mailed to {ManagerAddress}: open the .html beside the .eml in {Out}");
        if (!Once)
        {
            Console.WriteLine(DemoDock.WhereToLook(address, key));
            Console.WriteLine(await DemoPeople.WhereToSignInAsync(app, card, ct));
        }

        return new Totals(fleet.Boats, records, findings.Count, digests);
    }

    /// <summary>Whether the usual port is taken, by another demo or a real one: then any free one does. An address that was asked for is not swapped.</summary>
    private static bool Taken(string urls)
    {
        if (urls != FleetSettings.DefaultUrls) return false;
        var port = new Uri(urls).Port;
        return System.Net.NetworkInformation.IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Any(l => l.Port == port);
    }

    private static async Task StayAsync(WebApplication app, string database, CancellationToken ct)
    {
        // The private server's password is random, works on this machine only and goes with the demo; a named server's is never shown.
        var at = new NpgsqlConnectionStringBuilder(database);
        var password = Environment.GetEnvironmentVariable("FLEETWAKE_DB") is null ? $"PGPASSWORD={at.Password} " : "";
        Console.WriteLine($"  psql:     {password}psql -h {at.Host} -p {at.Port} -U {at.Username} {at.Database}   (schema fleetwake)");
        Console.WriteLine("The demo stays up. Ctrl-C ends it and takes its database away.");
        await Starting.WaitAsync(app, ct);
    }

    private static async Task UntilAsync(string what, Func<Task<bool>> reached, CancellationToken ct)
    {
        var clock = Stopwatch.StartNew();
        while (!await reached())
        {
            if (clock.Elapsed > Patience) throw new CommandException($"demo: gave up waiting for {what} after {Patience.TotalMinutes:0} minutes; run it again, and with FLEETWAKE_DB set to a server of your own if it happens again.");
            await Task.Delay(100, ct);
        }
    }

    private static void Say(string line) => Console.WriteLine($"demo: {line}");

    private sealed record Totals(int Boats, int Records, int Findings, int Digests);
}
