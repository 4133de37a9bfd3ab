using FleetWake.Import;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Store.Histories;
using FleetWake.Store.Import;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Marten;

namespace FleetWake.Journey.Tests.Import;

/// <summary>Sheets brought into the record of a running fleet, good rows and bad ones.</summary>
public sealed class ImportingTests(PostgresFixture postgres) : IAsyncLifetime
{
    private readonly SheetFolder folder = new();
    private readonly DockRecords dock = new();
    private Mailbox mailbox = null!;
    private RunningFleet fleet = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        mailbox = Mailbox.Open();
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("import"), mailbox.Settings);
        await fleet.SendAsync([.. dock.Outfit("tern", "Tern"), .. dock.Outfit("skua", "Skua")], Ct);
    }

    public async ValueTask DisposeAsync()
    {
        folder.Dispose();
        await fleet.DisposeAsync();
        await mailbox.DisposeAsync();
    }

    [Fact]
    public async Task Of_a_hundred_rows_ten_are_bad_each_is_reported_and_the_others_are_recorded_once()
    {
        folder.With(SheetFolder.Strikes, [.. Enumerable.Range(0, 100).Select(Row).Prepend("key,happened_at,boat,position,object,severity,hours")]);
        Assert.Equal(new ImportTotals(100, 90, 0, 0, 0, 10), await ImportAsync());
        Assert.Equal("file,line,column,value,why", folder.Report[0].TrimStart('\uFEFF'));
        Assert.Equal(11, folder.Report.Length);
        Assert.StartsWith("strike_reported.csv,9,severity,awful,", folder.Report[1], StringComparison.Ordinal);
        Assert.Equal(90, await StrikesAsync());

        Assert.Equal(new ImportTotals(100, 0, 0, 90, 0, 10), await ImportAsync());
        Assert.Equal(90, await StrikesAsync());

        // Mended, the ten are recorded and the ninety are repeats; there is nothing to report any more.
        File.WriteAllText(Path.Combine(folder.Path, SheetFolder.Strikes), File.ReadAllText(Path.Combine(folder.Path, SheetFolder.Strikes)).Replace("awful", "bent", StringComparison.Ordinal));
        Assert.Equal(new ImportTotals(100, 10, 0, 90, 0, 0), await ImportAsync());
        Assert.Empty(folder.Report);

        static string Row(int i) => $"s{i},2026-03-{(i % 28) + 1:00} 10:{i % 60:00},tern,single,rock,{(i % 10 == 7 ? "awful" : "no_mark")},";
    }

    [Fact]
    public async Task A_dry_run_tells_the_same_and_records_nothing()
    {
        folder.With(SheetFolder.Strikes, "happened_at,boat,position,object,severity", "2026-03-01 10:00,tern,single,rock,bent", "2026-03-02 10:00,tern,single,rock,awful");
        Assert.Equal(new ImportTotals(2, 1, 0, 0, 0, 1), await ImportAsync(folder.Request with { DryRun = true }));
        Assert.Equal(0, await StrikesAsync());
    }

    [Fact]
    public async Task A_row_that_changed_is_a_conflict_until_it_is_told_as_an_amendment()
    {
        const string Header = "key,happened_at,boat,position,object,severity,amends_key,entered_at";
        folder.With(SheetFolder.Strikes, Header, "s1,2026-03-01 10:00,tern,single,rock,bent,,");
        await ImportAsync();
        folder.With(SheetFolder.Strikes, Header, "s1,2026-03-01 10:00,tern,single,rock,chipped,,");
        Assert.Equal(new ImportTotals(1, 0, 0, 0, 1, 0), await ImportAsync());
        Assert.Contains("amends_key", folder.Report[1], StringComparison.Ordinal);
        Assert.Contains("\"s1\"", folder.Report[1].Replace("\"\"", "\"", StringComparison.Ordinal), StringComparison.Ordinal);

        folder.With(SheetFolder.Strikes, Header, "s1,2026-03-01 10:00,tern,single,rock,bent,,", "s1-corrected,2026-03-01 10:00,tern,single,rock,chipped,s1,2026-03-02 08:00");
        Assert.Equal(new ImportTotals(2, 1, 0, 1, 0, 0), await ImportAsync());
        var finding = await FindingAsync("tern");
        Assert.Equal(Logbook.Strikes.StrikeSeverity.Chipped, Assert.Single(Assert.Single(finding.Positions).OpenStrikes).Severity);
    }

    [Fact]
    public async Task Rows_of_a_boat_that_nobody_registered_are_held_until_its_sheet_comes()
    {
        folder.With(SheetFolder.Strikes, "happened_at,boat,position,object,severity", "2026-03-01 10:00,gannet,single,rock,bent");
        Assert.Equal(new ImportTotals(1, 0, 1, 0, 0, 0), await ImportAsync());
        folder.With("boat_registered.csv", "happened_at,boat,name,dock,dock_zone,water,positions", "2026-01-01 09:00,gannet,Gannet,old-mole,Pacific/Auckland,salt,port|starboard");
        Assert.Equal(new ImportTotals(2, 1, 0, 1, 0, 0), await ImportAsync());
    }

    [Fact]
    public async Task What_the_rows_contradict_is_asked_by_the_findings()
    {
        folder.With("prop_mounted.csv", "happened_at,boat,position,prop,hours", "2026-02-01 10:00,skua,single,p-tern,95");
        folder.With("hours_read.csv", "happened_at,engine,hours", "2026-02-01 10:00,e-tern,120", "2026-02-08 10:00,e-tern,131", "2026-02-15 10:00,e-tern,57", "2026-02-20 10:00,e-tern,140");
        await ImportAsync();
        var finding = await FindingAsync("tern");
        Assert.Contains(finding.Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces);
        Assert.Contains(finding.Contradictions, c => c.Kind == ContradictionKind.HoursOutOfLine && c.Question.Contains("57", StringComparison.Ordinal));
        Assert.Contains((await FindingAsync("skua")).Contradictions, c => c.Kind == ContradictionKind.PropInTwoPlaces);
    }

    [Fact]
    public async Task An_engine_that_moves_leaves_its_open_strike_on_view_where_it_was_struck()
    {
        folder.With(SheetFolder.Strikes, "happened_at,boat,position,object,severity", "2026-03-01 10:00,tern,single,rock,bent");
        folder.With("engine_fitted.csv", "happened_at,boat,position,engine,hours", "2026-03-02 10:00,skua,single,e-tern,150");
        await ImportAsync();
        var finding = await FindingAsync("tern");
        Assert.Null(Assert.Single(finding.Positions).Engine);
        Assert.Single(finding.Positions[0].OpenStrikes);
        Assert.Contains(Attentions.Of(finding), a => a.Blocks);
        Assert.Equal("e-tern", Assert.Single((await FindingAsync("skua")).Positions).Engine!.Engine);
    }

    private async Task<ImportTotals> ImportAsync(ImportRequest? request = null) =>
        await new ImportRun(fleet.Service<IDocumentStore>(), TimeProvider.System).RunAsync(request ?? folder.Request, Ct);

    private async Task<int> StrikesAsync()
    {
        await using var session = fleet.Service<IDocumentStore>().QuerySession(RunningFleet.Operator);
        return await session.Events.QueryAllRawEvents().CountAsync(e => e.EventTypeName == "strike_reported", Ct);
    }

    private async Task<BoatFinding> FindingAsync(string boat)
    {
        var reading = fleet.Service<FleetReading>();
        await RunningFleet.UntilAsync("findings up to date", () => reading.UpToDateAsync(Ct, RunningFleet.Operator), Ct);
        return (await reading.FindingAsync(RunningFleet.Operator, boat, Ct))!.Finding;
    }
}
