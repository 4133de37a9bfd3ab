using System.Text.Json.Nodes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Npgsql;

namespace FleetWake.Faults.Tests;

/// <summary>The fit of a fleet is killed, raced and cut off: it is recorded once, and the next look makes good what was lost.</summary>
public sealed class FitFaultTests(PostgresFixture postgres)
{
    private const string Count = "select count(*) from fleetwake.mt_events where type = 'fleet_prior_fitted'";
    private static readonly MailSettings Nowhere = new("a@b.example", Path.GetTempPath(), null);
    private readonly DockRecords dock = new();

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_fit_that_is_killed_before_it_is_recorded_leaves_nothing_and_the_next_one_is_the_first()
    {
        await using var fleet = await StartAsync(await postgres.NewDatabaseAsync("killed", Ct));
        using (var victim = await BlockedAsync(fleet.Database, () => new FleetProgram(fleet.Database, "prior", "--operator", RunningFleet.Operator)))
        {
            victim.Program.Signal("KILL");
            await victim.Program.EndAsync(Ct);
        }

        await Says(fleet.Database, "prior: recorded: the first", "prior", "--operator", RunningFleet.Operator);
        Assert.Equal(1L, await AskAsync(fleet.Database, Count));
        await RunningFleet.UntilAsync("findings under the fit", async () => await UnderAsync(fleet, 1), Ct);
    }

    [Fact]
    public async Task Programs_that_fit_at_once_record_one_fit()
    {
        await using var fleet = await StartAsync(await postgres.NewDatabaseAsync("raced", Ct), fits: TimeSpan.FromSeconds(1));
        var both = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => FleetProgram.RunAsync(fleet.Database, Ct, "prior", "--operator", RunningFleet.Operator)));
        Assert.All(both, b => Assert.True(b.Exit == 0, b.Output));
        Assert.All(both, b => Assert.Contains("Fleet prior 1 of ", b.Output, StringComparison.Ordinal));
        Assert.Equal(1L, await AskAsync(fleet.Database, Count));
    }

    [Fact]
    public async Task A_database_that_goes_away_during_a_fit_delays_it_and_nobody_restarts_anything()
    {
        await using var server = await RestartableServer.StartAsync(Ct);
        // The records came before last night by this clock, so the tick fits as soon as they are folded.
        var time = ShiftedTime.From(TimeProvider.System.GetUtcNow().AddDays(2));
        var connection = await server.NewDatabaseAsync("cut", Ct);
        await using var fleet = await RunningFleet.StartAsync(connection, Nowhere, time, fits: TimeSpan.FromSeconds(1), ct: Ct);
        await using (var blocker = await LockAsync(connection))
        {
            await fleet.SendAsync([.. Records()], Ct);
            await RunningFleet.UntilAsync("the fit to stand before its record", () => IsBlockedAsync(connection), Ct);
            await server.StopAsync();
        }

        await Task.Delay(TimeSpan.FromSeconds(3), Ct); // some ticks run into it
        NpgsqlConnection.ClearAllPools();
        await server.StartAgainAsync(Ct);
        await RunningFleet.UntilAsync("findings under the fit", async () => await UnderAsync(fleet, 1), Ct);
        await Task.Delay(TimeSpan.FromSeconds(3), Ct); // and some more ticks
        Assert.Equal(1L, await AskAsync(connection, Count));
    }

    [Fact]
    public async Task The_command_tells_what_the_fleet_has_shown_in_words_and_as_the_api_does()
    {
        await using var fleet = await StartAsync(await postgres.NewDatabaseAsync("prior", Ct), records: false);
        string[] prior = ["prior", "--operator", RunningFleet.Operator];
        await Says(fleet.Database, "no boat has a usable trial yet", prior);
        await Says(fleet.Database, "this is what the trade expects", [.. prior, "--show"]);
        Assert.Equal(0, JsonNode.Parse(await fleet.Http.GetStringAsync("/api/fleet/prior", Ct))!["number"]!.GetValue<int>());

        await fleet.SendAsync([.. Records()], Ct);
        await RunningFleet.UntilAsync("the record", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        await Says(fleet.Database, "aluminium, salt water", prior);
        await Says(fleet.Database, "not recorded: nothing moved enough to matter", prior);
        await Says(fleet.Database, "Fleet prior 2 of ", [.. prior, "--always"]);
        using var shown = new FleetProgram(fleet.Database, [.. prior, "--show", "--json"]);
        Assert.Equal(0, await shown.EndAsync(Ct));
        using var answer = await fleet.Http.GetAsync("/api/fleet/prior", Ct);
        Assert.Equal(await answer.Content.ReadAsStringAsync(Ct), shown.StandardOutput.Trim());
        Assert.False(answer.Headers.ETag!.IsWeak);
        var (exit, said) = await FleetProgram.RunAsync(fleet.Database, Ct, "prior", "--operator", RunningFleet.Operator, "--show", "--always");
        Assert.Equal(1, exit);
        Assert.Contains("give one of them", said, StringComparison.Ordinal);
        var (_, check) = await FleetProgram.RunAsync(fleet.Database, Ct, "check");
        Assert.Contains("ok    fits       1 fleets looked at", check, StringComparison.Ordinal);
    }

    private async Task<RunningFleet> StartAsync(string database, bool records = true, TimeSpan? fits = null)
    {
        var fleet = await RunningFleet.StartAsync(database, Nowhere, fits: fits, ct: Ct);
        if (!records) return fleet;
        await fleet.SendAsync([.. Records()], Ct);
        await RunningFleet.UntilAsync("the record", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct);
        return fleet;
    }

    private IEnumerable<Logbook.Entries.ICommand> Records() =>
        dock.Outfit("tern", "Tern").Concat([
            dock.Trial("tern", "2026-02-01T10:00:00", 5600, 120),
            dock.Trial("tern", "2026-03-01T10:00:00", 5620, 150),
            dock.Trial("tern", "2026-04-01T10:00:00", 5630, 190),
        ]);

    private static async Task<bool> UnderAsync(RunningFleet fleet, int number) =>
        (await fleet.Service<FleetReading>().FindingAsync(RunningFleet.Operator, "tern", Ct))?.PriorVersion == number;

    /// <summary>Starts a program and waits until its fit is made and stands before its record; what holds it goes when this is disposed.</summary>
    private static async Task<Blocked> BlockedAsync(string database, Func<FleetProgram> start)
    {
        var held = await LockAsync(database);
        var program = start();
        await RunningFleet.UntilAsync("the fit to stand before its record", () => IsBlockedAsync(database), Ct);
        return new Blocked(program, held);
    }

    private static async Task<NpgsqlConnection> LockAsync(string database)
    {
        var connection = new NpgsqlConnection(database + ";Pooling=false");
        await connection.OpenAsync(Ct);
        // Held until the connection ends. Records of others lock the rows of mt_streams as well, so only the fleet's own stream is held.
        await using var command = new NpgsqlCommand(
            "begin; insert into fleetwake.mt_streams (tenant_id, id, version, type) values ('skerry-bay', 'fleet', 0, null)", connection);
        await command.ExecuteNonQueryAsync(Ct);
        return connection;
    }

    private static async Task<bool> IsBlockedAsync(string database) =>
        await AskAsync(database, "select count(*) from pg_stat_activity where datname = current_database() and wait_event_type = 'Lock' and query like '%mt_%'") > 0;

    private static async Task<long> AskAsync(string database, string sql)
    {
        await using var connection = new NpgsqlConnection(database + ";Pooling=false");
        await connection.OpenAsync(Ct);
        await using var command = new NpgsqlCommand(sql, connection);
        return (long)(await command.ExecuteScalarAsync(Ct))!;
    }

    private static async Task Says(string database, string what, params string[] arguments)
    {
        var (exit, output) = await FleetProgram.RunAsync(database, Ct, arguments);
        Assert.True(exit == 0 && output.Contains(what, StringComparison.Ordinal), $"{string.Join(' ', arguments)} ended with {exit}:\n{output}");
    }

    private sealed class Blocked(FleetProgram program, NpgsqlConnection held) : IDisposable
    {
        public FleetProgram Program => program;

        public void Dispose()
        {
            held.Dispose();
            program.Dispose();
        }
    }
}
