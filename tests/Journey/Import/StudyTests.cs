using System.Globalization;
using FleetWake.Import;
using FleetWake.Import.Study;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Marten;
using nietras.SeparatedValues;

namespace FleetWake.Journey.Tests.Import;

/// <summary>
/// A drift study converted, imported, worked and mailed, and assessed without a database: the numbers are the same. Two
/// fleets here; docs/import.md has the commands for all twenty.
/// </summary>
public sealed class StudyTests(PostgresFixture postgres) : IDisposable
{
    private static readonly RowDefaults None = new(null, null);
    private readonly string folder = Directory.CreateTempSubdirectory("fleetwake-study-test-").FullName;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Two_fleets_come_out_of_the_database_with_the_numbers_of_the_folder()
    {
        Assert.Equal((20, 10654), StudyConversion.Convert(Path.Combine(AppContext.BaseDirectory, "Data", "study"), folder));
        await using var mailbox = Mailbox.Open();
        await using var fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("study", Ct), mailbox.Settings, ct: Ct);
        foreach (var name in (string[])["p01", "p07"])
        {
            await fleet.Service<FleetOperators>().OpenAsync(name, name.ToUpperInvariant(), "Etc/UTC", Ct);
            var request = new ImportRequest(Path.Combine(folder, name), name, None);
            var totals = await new ImportRun(fleet.Service<IDocumentStore>(), TimeProvider.System).RunAsync(request, Ct);
            Assert.Equal(totals.Rows, totals.Recorded);
            var again = await new ImportRun(fleet.Service<IDocumentStore>(), TimeProvider.System).RunAsync(request, Ct);
            Assert.Equal(again.Rows, again.Repeated);
        }

        var reading = fleet.Service<FleetReading>();
        await RunningFleet.UntilAsync("findings up to date", () => reading.UpToDateAsync(Ct), Ct);
        foreach (var name in (string[])["p01", "p07"])
        {
            var stored = await reading.FindingsAsync(name, Ct);
            Assert.Equal(stored.SelectMany(f => Lines(f.Finding)), Assessed(name));
            Assert.All(stored, f => Assert.Empty(f.Finding.Contradictions));
            Assert.Contains(stored.SelectMany(f => f.Finding.Positions), p => p.Mounting?.Exit.State == BandExitState.Forecast);

            var digest = new DigestRenderer(new PngRenderer(), null).Render(WeeklyWear.Build(name, "2023-W05", new DateOnly(2023, 1, 30), [.. stored.Select(f => f.Finding)]));
            Assert.Null(digest.WhyFallback);
        }
    }

    [Theory]
    [InlineData("../p01")]
    [InlineData("/p01")]
    public void A_fleet_that_is_called_like_a_path_is_refused(string fleet)
    {
        foreach (var table in (string[])["boats.csv", "mountings.csv", "trials.csv", "events.csv"])
            File.Copy(Path.Combine(AppContext.BaseDirectory, "Data", "study", table), Path.Combine(folder, table));
        var boats = Path.Combine(folder, "boats.csv");
        File.WriteAllText(boats, File.ReadAllText(boats).Replace("P01,", $"{fleet},", StringComparison.Ordinal));
        Assert.Contains("fleet_id", Assert.Throws<Commands.CommandException>(() => StudyConversion.Convert(folder, Path.Combine(folder, "out"))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_that_a_spreadsheet_would_run_is_written_as_plain_text()
    {
        using var sheets = new SheetFolder();
        sheets.With("prop_mounted.csv", "key,happened_at,boat,position,prop", "\"=HYPERLINK(\"\"http://x.example\"\")\",2026-05-03 10:15,tern,single,p-1");
        using var output = new StringWriter();
        new AssessRun(TimeProvider.System).Run(sheets.Request, null, () => output, Ct);
        Assert.Contains(",\"'=HYPERLINK", output.ToString(), StringComparison.Ordinal);
    }

    /// <summary>The lines of present mountings, by boat, as far as both sides say the same.</summary>
    private List<string> Assessed(string name)
    {
        using var output = new StringWriter();
        new AssessRun(TimeProvider.System).Run(new ImportRequest(Path.Combine(folder, name), name, None), null, () => output, Ct);
        using var reader = Sep.Reader().FromText(output.ToString());
        string[] columns =
            ["boat", "prop", "fitted_on", "trials_used", "drift_rpm_per_100_h", "drift_low", "drift_high", "margin_rpm", "exit", "exit_hours_low", "exit_hours_high"];
        var lines = new List<string>();
        foreach (var row in reader)
        {
            if (row["ended_on"].Span.Length == 0) lines.Add(string.Join(',', row[columns].ToStringsArray()));
        }

        return lines;
    }

    private static IEnumerable<string> Lines(BoatFinding finding) => finding.Positions.Select(p => p.Mounting).OfType<MountingFinding>().Select(m => string.Join(
        ',',
        finding.Boat,
        m.Prop.Prop,
        $"{m.FittedOn:yyyy-MM-dd}",
        m.Trials.Count(t => t.SetAside is null),
        Number(m.Drift?.Value),
        Number(m.Drift?.Low),
        Number(m.Drift?.High),
        Number(m.Band.MarginRpm),
        Logbook.Entries.Words.Of(m.Exit.State),
        Number(m.Exit.EarliestHours),
        Number(m.Exit.LatestHours)));

    private static string Number(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";
}
