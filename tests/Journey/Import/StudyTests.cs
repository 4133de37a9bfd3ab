using System.Globalization;
using FleetWake.Drift;
using FleetWake.Import;
using FleetWake.Import.Study;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Store.Import;
using FleetWake.Store.Operators;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Marten;
using nietras.SeparatedValues;

namespace FleetWake.Journey.Tests.Import;

/// <summary>
/// A drift study converted, imported, worked, fitted and mailed; assessed without a database; and estimated from its own tables by
/// "fleetwake drift": the numbers are the same. Two fleets here; docs/import.md has the commands for all twenty.
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
        await RunningFleet.UntilAsync("findings up to date", () => reading.UpToDateAsync(Ct), Ct, TimeSpan.FromMinutes(4));
        foreach (var name in (string[])["p01", "p07"])
        {
            var card = (await fleet.Service<FleetOperators>().FindAsync(name, Ct))!;
            var fit = await fleet.Service<FleetFitStep>().FitAsync(card, FitWish.Now, Ct);
            Assert.Equal((FitOutcome.Recorded, 1, 50), (fit.Outcome, fit.Newest!.Number, fit.Newest.Mountings));
        }

        var told = new List<MountingFinding>();
        await RunningFleet.UntilAsync("findings under the fit", () => reading.UpToDateAsync(Ct), Ct, TimeSpan.FromMinutes(4));
        foreach (var name in (string[])["p01", "p07"])
        {
            var stored = await reading.FindingsAsync(name, Ct);
            Assert.All(stored, f => Assert.Equal(1, f.PriorVersion));
            Assert.Equal(stored.SelectMany(f => Lines(f.Finding)), Assessed(name));
            Assert.All(stored, f => Assert.Empty(f.Finding.Contradictions));
            Assert.Contains(stored.SelectMany(f => f.Finding.Positions), p => p.Mounting?.Exit.State == BandExitState.Forecast);

            var priors = await reading.PriorsAsync(name, Ct);
            told.AddRange(stored.SelectMany(f => f.Finding.Positions).Select(p => p.Mounting).OfType<MountingFinding>());
            told.AddRange((await reading.HistoriesAsync(name, [.. stored.Select(f => f.Boat)], Ct)).SelectMany(h => EveryMounting.Of(h, priors)).Where(m => m.Span.To is not null).Select(m => m.Wear));
            var digest = new DigestRenderer(new PngRenderer(), null).Render(WeeklyWearDraft.Of(WeeklyWear.Build(name, "2023-W05", new DateOnly(2023, 1, 30), [.. stored.Select(f => f.Finding)])));
            Assert.Null(digest.WhyFallback);
        }

        Assert.Equal(100, told.Count);
        AreAsTheDoorTells(told);
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
        new AssessRun(TimeProvider.System).Run(sheets.Request, null, fit: true, () => output, Ct);
        Assert.Contains(",\"'=HYPERLINK", output.ToString(), StringComparison.Ordinal);
    }

    /// <summary>The lines of present mountings, by boat, as far as both sides say the same.</summary>
    private List<string> Assessed(string name)
    {
        using var output = new StringWriter();
        new AssessRun(TimeProvider.System).Run(new ImportRequest(Path.Combine(folder, name), name, None), null, fit: true, () => output, Ct);
        using var reader = Sep.Reader().FromText(output.ToString());
        string[] columns =
        [
            "boat", "prop", "fitted_on", "trials_used", "drift_rpm_per_100_h", "drift_low", "drift_high", "margin_rpm", "exit", "exit_hours_low", "exit_hours_high",
            "gross_chance_max", "fleet_only", "alarm", "exit_on", "exit_earliest", "exit_latest", "next_trial_value", "level_rpm",
        ];
        var lines = new List<string>();
        foreach (var row in reader)
        {
            if (row["ended_on"].Span.Length == 0) lines.Add(string.Join(',', row[columns].ToStringsArray()));
        }

        return lines;
    }

    /// <summary>
    /// The tables count hours from the fitting and the record by the engine's meter, and fleets, boats and waters are called otherwise:
    /// what is left of that is the last digits. Mountings that have ended are told as they were to their end.
    /// </summary>
    private static void AreAsTheDoorTells(IEnumerable<MountingFinding> mountings)
    {
        const double Alike = 1e-6;
        var door = new DriftRun(DriftTables.Read(Path.Combine(AppContext.BaseDirectory, "Data", "study"), ""), null);
        var rows = door.Rows.ToDictionary(r => r.Member.Id, StringComparer.Ordinal);
        var (forecasts, alarms, answered) = (0, 0, 0);
        foreach (var m in mountings)
        {
            var told = door.Of(rows[m.Prop.Prop]);
            var drift = told.Assessment.RpmPer100Hours;
            Assert.Equal(drift.Value, m.Drift!.Value, Alike);
            Assert.Equal(drift.Low, m.Drift.Low, Alike);
            Assert.Equal(drift.High, m.Drift.High, Alike);
            if (m.Exit is { State: BandExitState.Forecast, Edge: BandEdge.Top })
            {
                forecasts++;
                Assert.Equal(told.Assessment.Exit!.MedianHours, m.Exit.HoursFromLastTrial!.Value, Alike);
                Assert.Equal(told.Assessment.Exit.EarliestHours, m.Exit.EarliestHours!.Value, Alike);
                if (m.Exit.LatestHours is { } latest) Assert.Equal(told.Assessment.Exit.LatestHours, latest, Alike);
            }

            // Work on the prop answers an alarm of the record; the tables know nobody who could answer.
            if (m.Watch is { Answered: > 0 })
            {
                answered++;
                Assert.NotNull(told.Alarm);
            }
            else
            {
                Assert.Equal(told.Alarm?.Trial, m.Watch?.RaisedAt is { } at ? m.Trials.ToList().FindIndex(t => t.Entry == at) : null);
                if (told.Alarm is not null) alarms++;
            }
        }

        Assert.True(forecasts > 10 && alarms > 10, $"{forecasts} forecasts, {alarms} alarms and {answered} answered ones were compared");
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
        Number(m.Exit.LatestHours),
        Number(m.Trials.Max(t => t.GrossChance)),
        m.FleetOnly ? "yes" : "no",
        $"{m.Watch?.RaisedOn:yyyy-MM-dd}",
        $"{m.Exit.Dates?.On:yyyy-MM-dd}",
        $"{m.Exit.Dates?.Earliest:yyyy-MM-dd}",
        $"{m.Exit.Dates?.Latest:yyyy-MM-dd}",
        Number(m.NextTrial?.ChangesDecisionChance),
        Number(m.LevelRpm?.Value)));

    private static string Number(double? number) => number?.ToString("R", CultureInfo.InvariantCulture) ?? "";
}
