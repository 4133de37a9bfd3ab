using CsCheck;
using FleetWake.Statistics.Life;

namespace FleetWake.Statistics.Tests.Life;

/// <summary>The ratio estimator with Fieller's limits. No published table; checked by definition and by simulation.</summary>
public class What_a_hundred_hours_cost
{
    private static readonly PropCost[] s_aluminium =
        [new(310, 420), new(355, 150), new(300, 380), new(2_860, 240), new(330, 95), new(415, 510)];

    private static readonly Gen<PropCost[]> s_props = Gen.Select(
        Gen.Double[0, 3000], Gen.Double[1, 600], (cost, hours) => new PropCost(cost, hours)).Array[2, 12];

    [Fact]
    public void It_is_all_costs_over_all_hours_and_not_the_mean_of_ratios()
    {
        var cost = CostPerHundredHours.Of(s_aluminium, 0.8)!;
        Assert.Equal(100 * 4570.0 / 1795, cost.Value, 1e-10);
        Assert.True(s_aluminium.Average(prop => 100 * prop.Cost / prop.Hours) > 1.2 * cost.Value);
    }

    /// <summary>At a limit R the mean of C - R H is Student's t of its own standard errors from nothing.</summary>
    [Fact]
    public void At_each_limit_the_balance_of_cost_and_hours_is_just_within_its_doubt() => s_props.Sample(props =>
    {
        var cost = CostPerHundredHours.Of(props, 0.8)!;
        if (double.IsFinite(cost.High))
            Assert.Equal(1, Balance(props, cost.High / 100), 1e-6);
        if (cost.Low > 0)
            Assert.Equal(1, Balance(props, cost.Low / 100), 1e-6);
        Assert.True(cost.Low <= cost.Value && cost.Value <= cost.High);
    });

    [Fact]
    public void Another_currency_or_unit_of_time_changes_the_figure_and_nothing_else() => s_props.Sample(props =>
    {
        var cost = CostPerHundredHours.Of(props, 0.8)!;
        var scaled = CostPerHundredHours.Of([.. props.Select(p => new PropCost(p.Cost * 8, p.Hours * 2))], 0.8)!;
        Lives.Close(4 * cost.Value, scaled.Value, 1e-9);
        Lives.Close(4 * cost.StandardError, scaled.StandardError, 1e-9);
        if (double.IsFinite(cost.High) && cost.High < 1e6)
            Lives.Close(4 * cost.High, scaled.High, 1e-6);
    });

    [Fact]
    public void Hours_that_say_next_to_nothing_leave_no_upper_limit()
    {
        var cost = CostPerHundredHours.Of([new(300, 1), new(300, 400)], 0.8)!;
        Assert.Equal(double.PositiveInfinity, cost.High);
        Assert.InRange(cost.Low, 0, cost.Value);
    }

    [Fact]
    public void One_prop_or_no_hours_give_no_figure_and_a_bad_one_is_named()
    {
        Assert.Null(CostPerHundredHours.Of([], 0.8));
        Assert.Null(CostPerHundredHours.Of([new(300, 400)], 0.8));
        Assert.Null(CostPerHundredHours.Of([new(300, 0), new(300, 0)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("props", () => CostPerHundredHours.Of([new(-1, 1)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("props", () => CostPerHundredHours.Of([new(1, double.NaN)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("level", () => CostPerHundredHours.Of([new(1, 1)], 0));
    }

    private static double Balance(PropCost[] props, double R)
    {
        var d = props.Select(prop => prop.Cost - (R * prop.Hours)).ToArray();
        var mean = d.Average();
        var n = d.Length;
        var se = Math.Sqrt(d.Sum(value => (value - mean) * (value - mean)) / (n - 1) / n);
        return Math.Abs(mean) / se / MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, n - 1, 0.9);
    }
}
