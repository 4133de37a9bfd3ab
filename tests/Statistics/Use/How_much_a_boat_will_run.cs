using FleetWake.Statistics.Use;
using static FleetWake.Statistics.Tests.ReferenceTable;

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
        var use = UsePosterior.Of(Uses.Flat(shape / (years * 100), shape, lump: 1), []);
        var chance = use.ChanceRunAtLeast(s_day, s_day.AddDays((int)Math.Round(horizon * 100)), n + 0.5);
        Assert.Equal(1 - atMost, chance, 1e-9);
    }

    /// <summary>180 h in 60 days upon a belief of 2 h/d with shape 4, in lumps of 5 h: shape 40, rate 22 per day-lump.</summary>
    [Fact]
    public void Its_own_hours_are_added_to_the_belief_of_the_fleet()
    {
        var use = UsePosterior.Of(Uses.Flat(2, 4, lump: 5), [new(s_day, s_day.AddDays(60), 180)]);
        var june = use.HoursPerMonth(6);
        Assert.Equal(30 * 5 * 40 / 70.0, june.Value, 1e-9);
        Assert.Equal(30 * 5 * Math.Sqrt(40) / 70.0, june.StandardError, 1e-9);
        Assert.Equal(68.869119073, june.Low, 1e-8); // qgamma(0.1, 40, 70/150)
        Assert.Equal(103.476646731, june.High, 1e-8); // qgamma(0.9, 40, 70/150)
        Assert.Equal(60 / 70.0, use.OwnShare, 1e-12);
    }

    [Fact]
    public void What_it_will_run_scatters_more_than_its_rate()
    {
        var use = UsePosterior.Of(Uses.Flat(2, 4, lump: 5), [new(s_day, s_day.AddDays(60), 180)]);
        // pnbinom(21, size = 40, prob = 70/110, lower.tail = FALSE): 22 lumps or more in 40 days
        Assert.Equal(0.567261198423, use.ChanceRunAtLeast(s_day, s_day.AddDays(40), 21.5 * 5), 1e-11);
        Assert.Equal(40 * 5 * 40 / 70.0, use.MeanHours(s_day, s_day.AddDays(40)), 1e-9);
    }
}
