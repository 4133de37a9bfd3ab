using System.Globalization;
using FleetWake.Commands;
using FleetWake.Drift;
using FleetWake.Statistics.Drift;

namespace FleetWake.Journey.Tests.Drift;

/// <summary>What "fleetwake drift" reads, writes and tells. No database.</summary>
public sealed class DriftTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("fleetwake-drift-test-").FullName;

    public DriftTests() => Tables(
        "P1,m1,b1,1,aluminium,silty,5000,6000,0\nP1,m2,b1,2,aluminium,silty,6000,5000,30\nP1,m3,,1,stainless,fresh,,,0\n",
        "m1,1,1.0,5,5700,20,50\nm1,2,8.0,60,5712,,\nm1,3,20.5,150,5800,12.5,-30\nm2,7,31,2,5800,20,0\n",
        "m1,9.5,70,strike\nm1,12,90,inspection\n");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Every_mounting_has_a_line_of_finite_numbers_also_one_without_trials_or_band()
    {
        var lines = new DriftRun(DriftTables.Read(folder, ""), 1.35).Estimates().ToArray();

        Assert.Equal("mounting_id,slope,slope_lo80,slope_hi80,exit_h,exit_lo80,exit_hi80,p_exit_500h,alarm,alarm_seq", lines[0]);
        Assert.Equal(["m1", "m2", "m3"], lines[1..].Select(l => l.Split(',')[0]));
        Assert.All(lines[1..].SelectMany(l => l.Split(',')[1..4]), cell => Assert.True(double.IsFinite(double.Parse(cell, CultureInfo.InvariantCulture))));
        Assert.Equal(["", "", "", ""], lines[3].Split(',')[4..8]);
    }

    [Fact]
    public void The_evidence_is_told_with_the_strike_in_its_place_and_no_date_for_a_single_trial()
    {
        var run = new DriftRun(DriftTables.Read(folder, ""), 1.35);

        Assert.Contains(Told(run, "m1"), l => l.Contains("STRIKE", StringComparison.Ordinal));
        Assert.Contains(Told(run, "m2"), l => l.Contains("no date is drawn from it", StringComparison.Ordinal));
        Assert.Contains(Told(run, "m3"), l => l.Contains("No forecast", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("m1,1,1.0,5,many,20,50\n", "trials.csv line 2: \"many\" is no number")]
    [InlineData("m1,1,1.0,5,NaN,20,50\n", "trials.csv line 2: \"NaN\" is no number")]
    public void A_cell_that_cannot_be_read_is_named_with_its_line(string trials, string complaint)
    {
        Tables("P1,m1,b1,1,aluminium,silty,5000,6000,0\n", trials, "");

        Assert.StartsWith(complaint, Assert.Throws<CommandException>(() => DriftTables.Read(folder, "")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_event_that_nobody_knows_and_a_mounting_that_is_there_twice_are_named()
    {
        Tables("P1,m1,b1,1,aluminium,silty,5000,6000,0\n", "", "m1,2,3,party\n");
        Assert.Contains("\"party\" is no event", Assert.Throws<CommandException>(() => DriftTables.Read(folder, "")).Message, StringComparison.Ordinal);

        Tables("P1,m1,b1,1,aluminium,silty,5000,6000,0\nP1,m1,b1,1,aluminium,silty,5000,6000,0\n", "", "");
        Assert.Contains("\"m1\" is there twice", Assert.Throws<CommandException>(() => DriftTables.Read(folder, "")).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("m1,1,1.0,5,5700,20,50\nm1,2,2.0,9,5710\n", "trials.csv line 3: ")]
    [InlineData("m1,1,1.0,5,5700,20,50,1\n", "trials.csv line 2: ")]
    public void A_row_with_too_few_or_too_many_cells_is_named_with_its_line(string trials, string complaint)
    {
        Tables("P1,m1,b1,1,aluminium,silty,5000,6000,0\n", trials, "");

        Assert.StartsWith(complaint, Assert.Throws<CommandException>(() => DriftTables.Read(folder, "")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_boat_below_its_band_is_never_told_as_one_that_stays_in_it()
    {
        Tables("P1,m1,b1,1,aluminium,silty,5000,6000,0\n", "m1,1,1.0,5,4790,20,0\nm1,2,3.0,35,4770,20,0\nm1,3,9.0,95,4800,20,0\n", "");
        var told = Told(new DriftRun(DriftTables.Read(folder, ""), 1.35), "m1");

        Assert.Contains(told, l => l.StartsWith("It is BELOW its rated band: the engine lugs.", StringComparison.Ordinal));
        Assert.DoesNotContain(told, l => l.Contains("does not leave", StringComparison.Ordinal));
    }

    private static string[] Told(DriftRun run, string mounting)
    {
        var of = run.Of(run.Rows.Single(r => r.Member.Id == mounting));
        var (prior, settings) = run.Fleet(of.Row).Member(of.Row.Member);
        return [.. DriftExplanation.Of(of, prior, settings, DriftAlarm.RecommendedThreshold)];
    }

    private void Tables(string mountings, string trials, string events)
    {
        File.WriteAllText(Path.Combine(folder, "mountings.csv"), "fleet_id,mounting_id,boat_id,mounting_no,material,water,rated_min_rpm,rated_max_rpm,fitted_week\n" + mountings);
        File.WriteAllText(Path.Combine(folder, "trials.csv"), "mounting_id,trial_seq,week,hours_since_fitting,wot_rpm_normalised,air_temp_c,load_delta_kg\n" + trials);
        File.WriteAllText(Path.Combine(folder, "events.csv"), "mounting_id,week,hours_since_fitting,type\n" + events);
    }
}
