using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using FleetWake.Statistics;
using FleetWake.Statistics.Charts;

namespace FleetWake.Reports.Tests.Pictures;

public class CusumPicturesTests
{
    private static CusumPicture Picture(BoatFinding boat) => CusumPictures.Of(boat, boat.Positions[0])!;

    [Fact]
    public void The_sums_are_those_of_the_chart_with_the_scores_clipped_and_the_gauges_step_as_the_least_scatter()
    {
        double[] rpm = [5650, 5670, 5730, 5740, 5800, 5840, 5890];
        var run = SelfStartingCusum.Run([.. rpm.Select(r => new ChartReading(r, 0))], 0.25, 3.6, 2.5, GaugeStep.StandardUncertainty(10));
        Assert.Equal(run.Select(p => p.Score is null ? (double?)null : p.Sums.Upper), Picture(SkerryBay.WornSkiff()).Points.Select(p => p.Above));
        Assert.Equal([null, null], Picture(SkerryBay.WornSkiff()).Points.Take(2).Select(p => p.Below));
    }

    [Fact]
    public void The_sentence_says_what_it_is_for_and_that_the_evidence_judges()
    {
        var said = Picture(SkerryBay.WornSkiff()).Statement;
        Assert.StartsWith("Gannet: each trial adds how far it lies above (or below) the mean of those before it", said, StringComparison.Ordinal);
        Assert.Contains("past the line at 3.6 since 2026-11-02: the level has risen.", said, StringComparison.Ordinal);
        Assert.EndsWith("The alarm itself is judged by the evidence (11 to one now, 3.9 to one raises it; 0.04 false alarms a boat-year on this fleet's trials).", said, StringComparison.Ordinal);
        Assert.Equal([5], Picture(SkerryBay.WornSkiff()).Points.Index().Where(p => p.Item.Alarm).Select(p => p.Index));
    }

    [Fact]
    public void It_begins_anew_at_a_new_baseline_and_names_it()
    {
        var picture = Picture(SkerryBay.StruckBoat());
        Assert.Equal([new CusumRestart(3, HistoryMarkKind.Strike, "strike, chipped")], picture.Restarts);
        Assert.Equal([false, false, true, false, false, true], picture.Points.Select(p => p.Above is not null));
    }

    [Fact]
    public void Fewer_than_three_trials_say_nothing_and_that_is_said()
    {
        Assert.Contains("There are 2 trials since the beginning: fewer than three say nothing here.", Picture(SkerryBay.NewBoat()).Statement, StringComparison.Ordinal);
        Assert.All(Picture(SkerryBay.NewBoat()).Points, p => Assert.Null(p.Above));
        var struck = SkerryBay.StruckBoat();
        var mounting = struck.Positions[0].Mounting! with { Trials = [.. struck.Positions[0].Mounting!.Trials.Take(4)] };
        Assert.Contains("There is 1 trial since the last new baseline", CusumPictures.Of(struck, struck.Positions[0] with { Mounting = mounting })!.Statement, StringComparison.Ordinal);
    }

    [Fact]
    public void Trials_that_were_set_aside_add_nothing() => Assert.Equal(3, Picture(SkerryBay.SetAsideBoat()).Points.Count);

    [Fact]
    public void A_constant_series_stands_at_nothing() =>
        Assert.Contains("Both sums stand at 0 after 6 trials", Picture(SkerryBay.Boat("Level", new Fitted(5000, 6000, [5500, 5500, 5500, 5500, 5500, 5500], 10, 10) { Drifts = false }.Position())).Statement, StringComparison.Ordinal);

    [Fact]
    public void Without_a_usable_trial_there_is_no_picture()
    {
        Assert.Null(CusumPictures.Of(SkerryBay.Untried(), SkerryBay.Untried().Positions[0]));
        Assert.Null(CusumPictures.Of(SkerryBay.Bare(), SkerryBay.Bare().Positions[0]));
    }

    [Fact]
    public void Short_and_long_records_are_drawn()
    {
        var falling = SkerryBay.Boat("Falls", new Fitted(5000, 6000, [5700, 5690, 5705, 5600, 5590, 5560, 5570, 5540], 10, 10) { Evidence = (0.2, null) }.Position());
        var many = SkerryBay.Boat("Many", new Fitted(5000, 6000, [.. Enumerable.Range(0, 200).Select(i => 5500.0 + (37 * i % 83))], 10, 3).Position());
        foreach (var boat in new[] { SkerryBay.WornSkiff(), SkerryBay.StruckBoat(), SkerryBay.RepitchedBoat(), SkerryBay.NewBoat(), falling, many })
        {
            var png = new PngRenderer().Render(Picture(boat));
            Assert.Equal(1200, (png[18] << 8) + png[19]);
            Assert.InRange(png.Length, 5_000, 90_000);
            if (Environment.GetEnvironmentVariable("LOOK_AT") is { } folder) File.WriteAllBytes(Path.Combine(folder, $"sums-{boat.DisplayName()}.png"), png);
        }
    }
}
