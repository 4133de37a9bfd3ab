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
        var lines = new DriftRun(DriftTables.Read(folder, ""), null).Estimates().ToArray();

        Assert.Equal("mounting_id,slope,slope_lo80,slope_hi80,exit_h,exit_lo80,exit_hi80,p_exit_500h,alarm,alarm_seq", lines[0]);
        Assert.Equal(["m1", "m2", "m3"], lines[1..].Select(l => l.Split(',')[0]));
        Assert.All(lines[1..].SelectMany(l => l.Split(',')[1..4]), cell => Assert.True(double.IsFinite(double.Parse(cell, CultureInfo.InvariantCulture))));
        Assert.Equal(["", "", "", ""], lines[3].Split(',')[4..8]);
    }

    [Fact]
    public void The_evidence_is_told_with_the_strike_in_its_place_and_no_date_for_a_single_trial()
    {
        var run = new DriftRun(DriftTables.Read(folder, ""), null);

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
        var told = Told(new DriftRun(DriftTables.Read(folder, ""), null), "m1");

        Assert.Contains(told, l => l.StartsWith("It is BELOW its rated band: the engine lugs.", StringComparison.Ordinal));
        Assert.DoesNotContain(told, l => l.Contains("does not leave", StringComparison.Ordinal));
    }

    [Fact]
    public void The_rate_of_false_alarms_is_told_and_is_the_fleet_s_own_where_it_has_five_mountings_with_two_trials()
    {
        Assert.Contains(Told(new(DriftTables.Read(folder, ""), null), "m1"), l => l.Contains("on eight trials a year, for this fleet has too few of its own, 95 % between 0.0", StringComparison.Ordinal));

        Tables(
            string.Concat(Enumerable.Range(1, 5).Select(m => $"P1,m{m},b{m},1,aluminium,silty,5000,6000,0\n")),
            string.Concat(Enumerable.Range(1, 5).Select(m => $"m{m},1,{m},5,57{m}0,20,0\nm{m},2,{9 + m},60,57{m}4,20,0\nm{m},3,{20 + m},130,57{m}1,20,0\n")),
            "");
        Assert.Contains(Told(new(DriftTables.Read(folder, ""), null), "m1"), l => l.Contains("on this fleet's own trials, 95 % between 0.0", StringComparison.Ordinal));
    }

    [Fact]
    public void A_threshold_that_is_given_holds_for_every_fleet_and_has_a_rate_of_its_own()
    {
        var (own, given) = (new DriftRun(DriftTables.Read(folder, ""), null), new DriftRun(DriftTables.Read(folder, ""), 0.4));
        var (common, rare) = (given.Fleet(given.Rows[0]).Calibration, own.Fleet(own.Rows[0]).Calibration);

        Assert.Equal((0.4, DriftAlarm.RecommendedThreshold), (common.Threshold, rare.Threshold));
        Assert.True(common.FalseAlarmsPerBoatYear > 2 * rare.FalseAlarmsPerBoatYear, $"{common}, {rare}");
    }

    [Fact]
    public void What_a_strike_cost_and_a_repitch_gave_back_is_told_and_whether_the_trials_saw_it()
    {
        Assert.Contains(Told(new(DriftTables.Read(folder, ""), null), "m1"), l => l.StartsWith("The strike of week 9.50 ", StringComparison.Ordinal) && l.EndsWith("drift and weather allowed for.", StringComparison.Ordinal));

        Tables(
            "P1,m1,b1,1,aluminium,silty,5000,6000,0\n",
            "m1,1,1,5,5900,,\nm1,2,5,35,5903,,\nm1,3,9,65,5700,,\nm1,4,14,95,5703,,\nm1,5,19,125,5800,,\n",
            "m1,6,40,repitch\nm1,15,100,strike\nm1,16,100,repair\n");
        var told = Told(new(DriftTables.Read(folder, ""), null), "m1");
        Assert.Contains(told, l => l.StartsWith("The repitch or repair of week 6.00 gave back: -", StringComparison.Ordinal));
        Assert.Contains(told, l => l.StartsWith("The strike of week 15.00 and repitch or repair of week 16.00 ", StringComparison.Ordinal));
    }

    [Fact]
    public void The_lower_end_of_the_band_is_told_where_it_is_the_nearer_one_and_not_elsewhere()
    {
        Tables("P1,m1,b1,1,aluminium,silty,5000,6000,0\n", string.Concat(Enumerable.Range(0, 12).Select(i => $"m1,{i + 1},{5 * i},{60 * i},{5300 - (11 * i)},,\n")), "");
        Assert.Contains(Told(new(DriftTables.Read(folder, ""), null), "m1"), l => l.StartsWith("The lower end is the nearer one. Below its rated band: after ", StringComparison.Ordinal));

        Tables("P1,m1,b1,1,aluminium,silty,5000,6000,0\n", string.Concat(Enumerable.Range(0, 12).Select(i => $"m1,{i + 1},{5 * i},{60 * i},{5600 + (11 * i)},,\n")), "");
        Assert.DoesNotContain(Told(new(DriftTables.Read(folder, ""), null), "m1"), l => l.Contains("lower end", StringComparison.Ordinal));
    }

    private static string[] Told(DriftRun run, string mounting)
    {
        var of = run.Of(run.Rows.Single(r => r.Member.Id == mounting));
        return [.. DriftExplanation.Of(of, run.Fleet(of.Row))];
    }

    private void Tables(string mountings, string trials, string events)
    {
        File.WriteAllText(Path.Combine(folder, "mountings.csv"), "fleet_id,mounting_id,boat_id,mounting_no,material,water,rated_min_rpm,rated_max_rpm,fitted_week\n" + mountings);
        File.WriteAllText(Path.Combine(folder, "trials.csv"), "mounting_id,trial_seq,week,hours_since_fitting,wot_rpm_normalised,air_temp_c,load_delta_kg\n" + trials);
        File.WriteAllText(Path.Combine(folder, "events.csv"), "mounting_id,week,hours_since_fitting,type\n" + events);
    }
}
