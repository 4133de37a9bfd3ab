using CsCheck;
using FleetWake.Statistics.Use;
using MathNet.Numerics;
using static FleetWake.Statistics.Tests.ReferenceTable;
using static FleetWake.Statistics.Tests.Use.Uses;

namespace FleetWake.Statistics.Tests.Use;

/// <summary>
/// A gamma rate and lumps give the negative binomial. Outside values: gamma_poisson_predictive.csv, computed by scipy 1.10.1,
/// and R 4.2.2 (the call beside each number); no publication was opened.
/// </summary>
public class How_much_a_boat_will_run
{
    private static readonly DateOnly s_day = new(2025, 3, 1);

    public static TheoryData<double, double, double, int, double> Predictive()
    {
        var rows = new TheoryData<double, double, double, int, double>();
        foreach (var cells in Rows("gamma_poisson_predictive.csv"))
            rows.Add(Number(cells[0]), Number(cells[1]), Number(cells[2]), (int)Number(cells[4]), Number(cells[5]));
        return rows;
    }

    /// <summary>A year of the table is 100 days here, an event a lump of one hour.</summary>
    [Theory]
    [MemberData(nameof(Predictive))]
    public void Between_two_lumps_the_chance_is_the_negative_binomial(double shape, double years, double horizon, int n, double atMost)
    {
        var use = UsePosterior.Of(Sure(shape / (years * 100), shape, lump: 1), []);
        var chance = use.ChanceRunAtLeast(s_day, s_day.AddDays((int)Math.Round(horizon * 100)), n + 0.5);
        Assert.Equal(1 - atMost, chance, 1e-9);
    }

    /// <summary>
    /// 180 h in 60 days upon a belief of 2 h/d with shape 4, in lumps of 5 h. The 36 lumps are worth 36 / 1.36, for the next
    /// year is not the last: shape 4 + 36/1.36, season days 10 + 60/1.36.
    /// </summary>
    [Fact]
    public void Its_own_hours_are_added_to_the_belief_of_the_fleet()
    {
        var use = UsePosterior.Of(Sure(2, 4, lump: 5), [new(s_day, s_day.AddDays(60), 180)]);
        var june = use.HoursPerMonth(6);
        Assert.Equal(84.45652173913, june.Value, 1e-10);
        Assert.Equal(15.30004725891, june.StandardError, 1e-10);
        Assert.Equal(65.53756514593, june.Low, 1e-9); // qgamma(0.1, 4 + 36/1.36, (10 + 60/1.36)/150)
        Assert.Equal(104.56164907099, june.High, 1e-9); // qgamma(0.9, ...)
        Assert.Equal(0.8152173913043, use.OwnShare, 1e-12);
    }

    [Fact]
    public void What_it_will_run_scatters_more_than_its_rate()
    {
        var use = UsePosterior.Of(Sure(2, 4, lump: 5), [new(s_day, s_day.AddDays(60), 180)]);
        // 22 lumps or more in 40 days: b <- 10 + 60/1.36; pnbinom(21, size = 4 + 36/1.36, prob = b/(b + 40), lower.tail = FALSE)
        Assert.Equal(0.5392417042914, use.ChanceRunAtLeast(s_day, s_day.AddDays(40), 21.5 * 5), 1e-11);
        Assert.Equal(84.45652173913 / 30 * 40, use.MeanHours(s_day, s_day.AddDays(40)), 1e-9);
    }

    [Fact]
    public void A_month_in_which_the_fleet_lies_ashore_adds_nothing()
    {
        var use = UsePosterior.Of(Summer(1, 3), []);
        Assert.Equal(0, use.HoursPerMonth(1).High);
        Assert.Equal(0, use.MeanHours(new(2025, 10, 1), new(2026, 4, 30)));
        Assert.Equal(0, use.ChanceRunAtLeast(new(2025, 10, 1), new(2026, 4, 30), 0.1));
        Assert.Equal(93, use.HoursPerMonth(7).Value, 1e-9); // 31 days of 3 h
    }

    /// <summary>The faster way to the same function, held against MathNet's.</summary>
    [Fact]
    public void The_chance_that_is_asked_often_is_the_chance() =>
        Gen.Select(Gen.Double[0.5, 4000], Gen.Double[0.05, 400], Gen.Double[0.001, 0.999]).Sample((a, b, x) =>
        {
            var expected = SpecialFunctions.BetaRegularized(a, b, x);
            Assert.Equal(expected, new RunChance(a, b).At(Math.Log(x), Math.Log(1 - x)).Chance, 1e-8);
        }, iter: 2000);

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    public void Nothing_is_run_for_certain(double hours) =>
        Assert.Equal(1, UsePosterior.Of(SeasonOfUse.Trade, []).ChanceRunAtLeast(s_day, s_day, hours));

    [Fact]
    public void Back_in_time_nothing_runs()
    {
        var use = UsePosterior.Of(SeasonOfUse.Trade, []);
        Assert.Equal(0, use.MeanHours(s_day, s_day.AddDays(-10)));
        Assert.Equal(0, use.ChanceRunAtLeast(s_day, s_day.AddDays(-10), 1));
        Assert.Equal(0, use.ChanceRunAtLeast(s_day, s_day.AddDays(10), double.PositiveInfinity));
    }

    /// <summary>A year's hours at a steady pace tell little of a boat when nobody knows the season.</summary>
    [Fact]
    public void A_boat_without_a_fleet_is_believed_less()
    {
        List<UseStretch> summer = [new(new(2025, 6, 1), new(2025, 8, 1), 180)];
        var (alone, known) = (UsePosterior.Of(SeasonOfUse.Trade, summer), UsePosterior.Of(SeasonOfUse.Trade with { SeasonDoubt = 0 }, summer));
        Assert.True(alone.OwnShare < known.OwnShare);
        Assert.True(alone.HoursPerDay.High - alone.HoursPerDay.Low > known.HoursPerDay.High - known.HoursPerDay.Low);
    }

    [Fact]
    public void A_season_that_no_fit_gives_is_a_fault_of_the_caller()
    {
        Assert.Throws<ArgumentException>(() => UsePosterior.Of(SeasonOfUse.Trade with { MonthShares = [1, 1] }, []));
        Assert.Throws<ArgumentException>(() => UsePosterior.Of(SeasonOfUse.Trade with { MeanHoursPerDay = double.NaN }, []));
        Assert.Throws<ArgumentOutOfRangeException>(() => UsePosterior.Of(SeasonOfUse.Trade, []).HoursPerMonth(13));
    }
}
