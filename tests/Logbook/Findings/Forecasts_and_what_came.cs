using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Findings.Forecasts;

namespace FleetWake.Logbook.Tests.Findings;

/// <summary>Forecasts are made again from the record up to a day and held against what came after it.</summary>
public class Forecasts_and_what_came
{
    /// <summary>Eight trials of a prop that wears by 40 RPM in 100 engine hours; the last on 14 June.</summary>
    private static readonly (double Hours, double Rpm)[] s_rising =
        [(100, 5520), (150, 5525), (200, 5570), (250, 5560), (300, 5610), (350, 5600), (400, 5640), (450, 5660)];

    private static readonly DateOnly s_made = new(2026, 6, 20);

    private static ForecastCheck Check(params (double Hours, double Rpm)[] later) =>
        Assert.Single(ForecastChecks.Of(Trialled.Boat([.. s_rising, .. later]).Around(), s_made));

    [Fact]
    public void While_no_trial_has_come_nothing_is_judged()
    {
        var check = Check();
        Assert.Equal((IntervalOutcome.Open, null), (check.NextTrial.Outcome, check.NextTrial.Came));
        Assert.Equal(IntervalOutcome.Open, check.Exit!.Outcome);
        Assert.Null(check.Leaves!.Happened);
    }

    [Theory]
    [InlineData(5680, IntervalOutcome.Held)]
    [InlineData(5550, IntervalOutcome.Below)]
    [InlineData(5810, IntervalOutcome.Above)]
    public void The_next_trial_is_held_against_what_was_foretold_of_it(double rpm, IntervalOutcome outcome)
    {
        var next = Check((500, rpm)).NextTrial;
        Assert.Equal((outcome, 0.8, (double?)rpm), (next.Outcome, next.Level, next.Came));
        Assert.InRange(5680, next.Low!.Value, next.High!.Value); // 5660 and half of 40 RPM per 100 h

        // The reading to come is in more doubt than the level: 0.7 % of noise is 39 RPM, and 1.28 times that on either side.
        Assert.InRange(next.High.Value - next.Low.Value, 100, 190);
    }

    [Fact]
    public void Only_the_first_trial_after_the_day_is_the_next_one()
    {
        Assert.Equal(5680, Check((500, 5680), (550, 5990)).NextTrial.Came);
        Assert.Equal(Check((500, 5680)).NextTrial, Check((500, 5680), (550, 5990)).NextTrial);
    }

    [Fact]
    public void What_came_after_a_strike_was_not_foretold()
    {
        var struck = Trialled.Boat([.. s_rising, (500, 5900)]).With(Dock.Strike(Trialled.Day(7.5)));
        Assert.Equal(IntervalOutcome.Open, Assert.Single(ForecastChecks.Of(struck.Around(), s_made)).NextTrial.Outcome);
    }

    [Fact]
    public void A_mounting_that_ended_before_the_day_foretells_nothing()
    {
        var off = Trialled.Boat(s_rising).With(Dock.Removed("2026-06-18T10:00"));
        Assert.Empty(ForecastChecks.Of(off.Around(), s_made));
    }

    [Fact]
    public void An_exit_within_its_interval_held_and_one_before_it_came_too_early()
    {
        var told = Check().Exit!;
        Assert.NotNull(told.High);
        var (low, high) = (told.Low!.Value, told.High!.Value);
        Assert.Equal(IntervalOutcome.Held, Check([.. Inside(low + 1), (450 + low + 100, 6020)]).Exit!.Outcome);
        Assert.Equal(IntervalOutcome.Below, Check((450 + (low / 2), 6050)).Exit!.Outcome);
        Assert.Equal(IntervalOutcome.Above, Check(Inside(high + 20)).Exit!.Outcome);

        // Inside before the interval began and outside within it: nobody knows on which side of its beginning it left.
        Assert.Equal(IntervalOutcome.Open, Check([.. Inside(low - 50), (450 + low + 50, 6020)]).Exit!.Outcome);
    }

    /// <summary>Trials inside the band up to some hours after the last one, none so far apart that a meter would outrun the clock.</summary>
    private static (double, double)[] Inside(double hours) =>
        [.. Enumerable.Range(1, (int)(hours / 200)).Select(i => 200.0 * i).Where(h => h < hours - 1).Append(hours).Select(h => (450 + h, 5700.0))];

    [Fact]
    public void A_reading_outside_that_the_next_one_takes_back_is_no_exit()
    {
        var low = Check().Exit!.Low!.Value;
        Assert.Equal(IntervalOutcome.Open, Check((450 + (low / 3), 6020), (450 + (low / 2), 5750)).Exit!.Outcome);
    }

    [Fact]
    public void A_chance_is_judged_once_a_hundred_hours_have_run_or_it_has_happened()
    {
        Assert.Null(Check((500, 5680)).Leaves!.Happened);
        Assert.False(Check((551, 5690)).Leaves!.Happened);
        Assert.True(Check((500, 6040)).Leaves!.Happened);
    }

    [Fact]
    public void The_checks_are_the_same_whatever_order_the_records_came_in()
    {
        var boat = Trialled.Boat([.. s_rising, (500, 5680), (550, 5700)]);
        Assert.Equal(ForecastChecks.Of(boat.Around(), s_made), ForecastChecks.Of(new Fleet().With(boat.Placed.Reverse()).Around(), s_made));
    }

    [Fact]
    public void The_figures_count_score_and_say_whether_the_claim_is_kept()
    {
        IntervalCheck Interval(IntervalOutcome outcome, double came) => new(outcome, 5500, 5600, 0.8, came);
        ForecastCheck Of(IntervalCheck next, ChanceCheck? chance = null) => new("b", "B", Position.Single, "m", next, null, chance);
        var figures = ForecastCalibration.Of(s_made,
        [
            .. Enumerable.Range(0, 7).Select(_ => Of(Interval(IntervalOutcome.Held, 5550), new(0.1, false))),
            Of(Interval(IntervalOutcome.Above, 5620), new(0.7, true)),
            Of(new(IntervalOutcome.Open, null, null, 0.8, null), new(0.3, null)),
        ]);
        var next = figures.NextTrial;
        Assert.Equal((8, 7, 0, 1, 1, true), (next.Judged, next.Held, next.Below, next.Above, next.Open, next.InLine));
        Assert.Equal(100, next.MeanWidth!.Value, 1e-9);
        Assert.Equal((100 * 7 + 300) / 8.0, next.MeanScore!.Value, 1e-9); // Gneiting and Raftery 2007, equation 43: 100 + 2/0.2 x 20 for the miss
        Assert.Equal((8, 1, 1.4, 1), (figures.Leaves.Judged, figures.Leaves.Happened, Math.Round(figures.Leaves.Expected, 9), figures.Leaves.Open));
        Assert.Equal(((7 * 0.01) + 0.09) / 8, figures.Leaves.Brier!.Value, 1e-12); // Brier 1950
        Assert.StartsWith("Forecasts of 2026-06-20. The next trial's RPM: 7 of 8 intervals held, 88 % (47 to 100 % at 95 %), in line with the 80 % claimed. 1 cannot be judged yet.", figures.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_nothing_nothing_is_claimed() =>
        Assert.Equal(
            "Forecasts of 2026-06-20. The next trial's RPM: none can be judged yet. Hours to the edge of the band: none can be judged yet. Of no chance of leaving the band within 100 engine hours is it known what came.",
            ForecastCalibration.Of(s_made, []).Sentence);
}
