using CsCheck;
using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>Leaving the band at either end, and the chance by any hours. Properties, no source.</summary>
public sealed class When_the_band_is_left
{
    [Fact]
    public void A_boat_that_loses_rpm_leaves_at_the_lower_end()
    {
        var hull = Drifts.Steady(12, -20, 40) with { RatedMinRpm = 5450 };
        var even = SlopePrior.Of([.. Enumerable.Repeat(1.0, SlopeGrid.Count)]);

        var found = DriftEstimator.Assess(hull, even, Drifts.Settings);

        // It stands near 5600 - 88 rpm: some 60 rpm above the end, at about 20 rpm per 100 h
        Assert.InRange(found.ExitBelow!.MedianHours, 150, 600);
        Assert.Equal(0, found.Exit!.Within500HoursChance, 1e-6);
    }

    [Fact]
    public void A_boat_below_its_band_has_left_it_already() =>
        Assert.Equal(0, Drifts.Assess(Drifts.Steady(8, 5) with { RatedMinRpm = 5800 }).ExitBelow!.LatestHours);

    /// <summary>A level that rises has left at the lower end by now or never; no chance grows out of nothing.</summary>
    [Fact]
    public void A_boat_that_gains_rpm_leaves_the_lower_end_now_or_never()
    {
        var rising = Drifts.Steady(12, 40, 40);
        var below = Drifts.Assess(rising with { RatedMinRpm = Drifts.Assess(rising).LevelRpm!.Value }).ExitBelow!;

        Assert.InRange(below.ChanceWithin(0), 0.05, 0.95);
        Assert.Equal(below.ChanceWithin(0), below.ChanceWithin(BandExit.HorizonHours), 1e-3);
    }

    [Fact]
    public void The_hours_are_where_the_chance_is_what_they_say() => Drifts.Any.Sample(
        s =>
        {
            var found = Drifts.Assess(s);
            foreach (var e in new[] { found.Exit!, found.ExitBelow! })
            {
                Assert.Equal(e.Within500HoursChance, e.ChanceWithin(500));
                foreach (var (hours, share) in new[] { (e.EarliestHours, 0.1), (e.MedianHours, 0.5), (e.LatestHours, 0.9) })
                {
                    if (hours == 0) Assert.True(e.ChanceWithin(0) >= share);
                    else if (hours == BandExit.HorizonHours) Assert.True(e.ChanceWithin(hours) <= share + 1e-9);
                    else
                    {
                        // Straight lines between hours in ratios of 1.107, and 5 h at first: where the chance rises steeply that is some hundredths off, but never by a place.
                        var (before, after) = hours < 5 ? (0, 5) : (hours / 1.11, hours * 1.11);
                        Assert.InRange(share, e.ChanceWithin(before) - 1e-9, e.ChanceWithin(after) + 1e-9);
                    }
                }
            }
        },
        iter: 300);

    [Fact]
    public void The_chance_never_falls_with_the_hours_and_keeps_to_its_range()
    {
        var e = Drifts.Assess(Drifts.Steady(6, 30)).Exit!;
        var chances = Enumerable.Range(0, 41).Select(i => e.ChanceWithin(50 * i)).ToArray();

        Assert.Equal(chances.Order(), chances);
        Assert.All(chances, c => Assert.InRange(c, 0, 1));
        Assert.Equal(chances[0], e.ChanceWithin(-7));
        Assert.Equal(chances[0], e.ChanceWithin(double.NaN));
        Assert.Equal(chances[^1], e.ChanceWithin(double.PositiveInfinity));
    }

    [Fact]
    public void A_forecast_is_its_four_numbers()
    {
        var e = Drifts.Assess(Drifts.Steady(6, 30)).Exit!;
        var read = new BandExit(e.EarliestHours, e.MedianHours, e.LatestHours, e.Within500HoursChance);

        Assert.Equal(e, read);
        Assert.Equal(e.GetHashCode(), read.GetHashCode());
        Assert.NotEqual(e, read with { MedianHours = e.MedianHours + 1 });
    }

    [Fact]
    public void One_made_of_its_numbers_alone_goes_straight_between_them()
    {
        var read = new BandExit(100, 300, 900, 0.6);

        Assert.Equal([0, 0.05, 0.1, 0.3, 0.5, 0.55, 0.6, 0.75, 0.9, 0.9], new double[] { 0, 50, 100, 200, 300, 400, 500, 700, 900, 2000 }.Select(h => Math.Round(read.ChanceWithin(h), 12)));
        Assert.Equal(0.9, new BandExit(0, 0, 0, 1).ChanceWithin(0));
        Assert.Equal(0, new BandExit(2000, 2000, 2000, 0).ChanceWithin(2000));
    }

    [Fact]
    public void The_level_at_no_hours_is_the_level_and_further_off_it_is_less_sure()
    {
        var found = Drifts.Assess(Drifts.Steady(6, 30));

        Assert.Equal(found.LevelRpm, found.LevelAt(0));
        Assert.True(found.LevelAt(1000)!.StandardError > 2 * found.LevelRpm!.StandardError);
        Assert.Equal(found.LevelRpm.Value + (3 * found.RpmPer100Hours.Value), found.LevelAt(300)!.Value, 1e-6);
        Assert.Null(found.LevelAt(double.NaN));
        Assert.Null(Drifts.Assess(new(5000, 6000, [], [])).LevelAt(0));
    }
}
