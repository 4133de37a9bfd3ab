using System.Diagnostics;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using FleetWake.Tests.Kit;
using Npgsql;

namespace FleetWake.Faults.Tests;

/// <summary>An import as a person starts it, and what it says and does when it is killed, interrupted or given nonsense.</summary>
public sealed class ImportFaultTests(PostgresFixture postgres) : IDisposable
{
    private const int Strikes = 12_000;
    private const int Rows = Strikes + 20;
    private readonly string folder = Directory.CreateTempSubdirectory("fleetwake-import-fault-").FullName;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Killed_ten_times_on_its_way_it_records_every_row_once()
    {
        var database = await ReadyAsync("killed");
        WriteFleet();
        for (var killed = 0; killed < 10; killed++)
        {
            // The last kill comes when half are in, long before the end; each at whatever moment of a transaction that is.
            using var program = Start(database);
            await RecordedAsync(program, database, Rows * 5 * (killed + 1) / 100);
            program.Signal("KILL");
            Assert.Equal(128 + 9, await program.EndAsync(Ct));
        }

        Assert.InRange(await CountAsync(database), Rows / 2, Rows - 1);
        var (exit, output) = await FleetProgram.RunAsync(database, Ct, Arguments);
        Assert.True(exit == 0, output);
        Assert.Matches($@"import: {Rows} rows: recorded \d+, held 0, repeated \d+, conflict 0, refused 0", output);
        Assert.Equal(Rows, await CountAsync(database));
        Assert.Equal(Rows, await CountAsync(database, "count(distinct data -> 'entry' ->> 'id')"));
    }

    [Fact]
    public async Task Interrupted_it_finishes_the_chunk_in_hand_and_says_how_to_go_on()
    {
        var database = await ReadyAsync("interrupted");
        WriteFleet();
        using var program = Start(database);
        await RecordedAsync(program, database, 1000);
        program.Signal("INT");
        Assert.Equal(130, await program.EndAsync(Ct));
        Assert.Contains("run the same command again to go on", program.Output, StringComparison.Ordinal);
        var recorded = await CountAsync(database);
        Assert.InRange(recorded, 1000, Rows - 1);
        Assert.Contains($"import: {recorded} rows: recorded {recorded},", program.Output, StringComparison.Ordinal);

        var (exit, output) = await FleetProgram.RunAsync(database, Ct, Arguments);
        Assert.Equal(0, exit);
        Assert.Contains($"import: {Rows} rows: recorded {Rows - recorded}, held 0, repeated {recorded},", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_commands_say_what_is_wrong_and_what_to_do()
    {
        var database = await ReadyAsync("words");
        await Says(database, 1, "There is no folder", "import", Path.Combine(folder, "nowhere"), "--operator", "fjord");
        await Says(database, 1, "--operator NAME", "import", folder);
        await Says(database, 1, "--write-templates", "import", folder, "--operator", "fjord");
        await Says(database, 1, "There is no operator", "import", folder, "--operator", "nobody");
        await Says(null, 0, "import: wrote", "import", folder, "--write-templates");
        await Says(database, 0, "import: 0 rows: recorded 0", "import", folder, "--operator", "fjord", "--by", "office", "--zone", "Europe/Oslo");

        File.WriteAllText(Path.Combine(folder, "hours_read.csv"), "happened_at;engine;hours\r\n2026-05-03;e-1;212,5\r\n2026-05-04 10:15;e-1;far\r\n");
        await Says(database, 1, "the column \"by\" is missing: add it, or give --by", "import", folder, "--operator", "fjord");
        var (exit, output) = await FleetProgram.RunAsync(database, Ct, "import", folder, "--operator", "fjord", "--by", "office", "--zone", "Europe/Oslo");
        Assert.Equal(1, exit);
        Assert.Contains("hours_read.csv line 3, hours \"far\": is no number", output, StringComparison.Ordinal);
        Assert.Contains("1 rows without a time of day: taken as noon", output, StringComparison.Ordinal);
        Assert.Contains("held: engine e-1 is not registered yet (1 rows)", output, StringComparison.Ordinal);
        Assert.EndsWith("import: 2 rows: recorded 0, held 1, repeated 0, conflict 0, refused 1", output.TrimEnd(), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", output, StringComparison.Ordinal);
    }

    private string[] Arguments => ["import", folder, "--operator", "fjord", "--by", "office", "--zone", "Europe/Oslo"];

    private FleetProgram Start(string database) => new(database, Arguments);

    /// <summary>Waits until so many rows are recorded, while the program runs and for some minutes at most.</summary>
    private static async Task RecordedAsync(FleetProgram program, string database, int rows)
    {
        await using var source = NpgsqlDataSource.Create(database);
        var clock = Stopwatch.StartNew();
        while (await CountAsync(source) < rows)
        {
            Assert.False(program.HasEnded, $"it ended before {rows} rows were recorded:\n{program.Output}");
            Assert.True(clock.Elapsed < TimeSpan.FromMinutes(3), $"{rows} rows were not recorded in time:\n{program.Output}");
            await Task.Delay(20, Ct);
        }
    }

    private async Task<string> ReadyAsync(string hint)
    {
        var database = await postgres.NewDatabaseAsync("import_" + hint, Ct);
        await using var source = NpgsqlDataSource.Create(database);
        using var store = FleetStore.Open(source);
        await new FleetOperators(store, TimeProvider.System).OpenAsync("fjord", "Fjord Hire", "Europe/Oslo", Ct);
        return database;
    }

    private void WriteFleet()
    {
        File.WriteAllLines(
            Path.Combine(folder, "boat_registered.csv"),
            Enumerable.Range(0, 20).Select(b => $"2026-01-01 09:00,boat-{b},Boat {b},north-pier,Europe/Oslo,salt,single").Prepend("happened_at,boat,name,dock,dock_zone,water,positions"));
        File.WriteAllLines(
            Path.Combine(folder, "strike_reported.csv"),
            Enumerable.Range(0, Strikes).Select(i => $"s{i},2026-02-{(i % 28) + 1:00} 10:15,boat-{i % 20},single,rock,no_mark").Prepend("key,happened_at,boat,position,object,severity"));
    }

    private static async Task<long> CountAsync(string database, string what = "count(*)")
    {
        await using var source = NpgsqlDataSource.Create(database);
        return await CountAsync(source, what);
    }

    private static async Task<long> CountAsync(NpgsqlDataSource source, string what = "count(*)")
    {
        await using var command = source.CreateCommand($"select {what} from fleetwake.mt_events where type in ('boat_registered', 'strike_reported')");
        return (long)(await command.ExecuteScalarAsync(Ct))!;
    }

    private static async Task Says(string? database, int exit, string text, params string[] arguments)
    {
        var (ended, output) = await FleetProgram.RunAsync(database, Ct, arguments);
        Assert.True(ended == exit && output.Contains(text, StringComparison.Ordinal), $"{string.Join(' ', arguments)} ended with {ended}:\n{output}");
    }
}
