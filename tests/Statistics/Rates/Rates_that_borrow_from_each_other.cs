using FleetWake.Statistics.Rates;

namespace FleetWake.Statistics.Tests.Rates;

/// <summary>
/// Gamma-Poisson rates against brute force over a dense grid with scipy (computed, Reference/make/life_and_rates.py),
/// which shares the priors and no formula. The code looks at fewer spreads and means, which costs up to two per cent.
/// </summary>
public class Rates_that_borrow_from_each_other
{
    [Theory]
    [InlineData("docks")]
    [InlineData("quiet")]
    [InlineData("alike")]
    [InlineData("alone")]
    public void Means_errors_and_limits_are_those_of_brute_force(string fleet)
    {
        var rows = ReferenceTable.Rows("shrunk_rates.csv").Where(row => row[0] == fleet).ToArray();
        var tallies = rows.Where(row => row[1] != "unseen")
            .Select(row => new Tally((int)ReferenceTable.Number(row[2]), ReferenceTable.Number(row[3]))).ToArray();
        var rates = RateShrinkage.Of(tallies, 0.8)!;
        foreach (var (row, rate) in rows.Zip([.. rates.Units.Select(unit => unit.Rate), rates.Unseen]))
        {
            Close(row[4], rate.Value, 0.005);
            Close(row[5], rate.StandardError, 0.01);
            Close(row[6], rate.Low, 0.01);
            Close(row[7], rate.High, 0.02);
        }

        static void Close(string expected, double actual, double relative)
        {
            var value = ReferenceTable.Number(expected);
            Assert.Equal(value, actual, relative * value);
        }
    }

    [Fact]
    public void A_short_record_is_drawn_far_towards_the_fleet_and_a_long_one_hardly()
    {
        Tally[] docks = [new(1, 0.5), new(200, 100), new(10, 100), new(20, 100), new(100, 100), new(40, 100)];
        var rates = RateShrinkage.Of(docks, 0.8)!;
        Assert.True(rates.Units[0].Rate.Value < rates.Units[1].Rate.Value, "one strike in half a month is not worst");
        Assert.InRange(rates.Units[0].OwnShare, 0.1, 0.5);
        Assert.InRange(rates.Units[1].OwnShare, 0.97, 1);
        Assert.Equal(2, rates.Units[1].Rate.Value, 0.05);
    }

    [Fact]
    public void A_unit_without_exposure_is_one_that_nobody_has_seen()
    {
        var rates = RateShrinkage.Of([new(3, 10), new(9, 10), new(0, 0)], 0.8)!;
        Assert.Equal(rates.Unseen, rates.Units[2].Rate);
        Assert.Equal(0, rates.Units[2].OwnShare);
        Assert.True(rates.Unseen.High - rates.Unseen.Low > rates.FleetMean.High - rates.FleetMean.Low);
    }

    [Fact]
    public void Units_that_differ_show_a_spread_and_units_alike_show_little()
    {
        var differ = RateShrinkage.Of([.. Enumerable.Range(0, 10).Select(i => new Tally(i % 2 == 0 ? 5 : 80, 40))], 0.8)!;
        var alike = RateShrinkage.Of([.. Enumerable.Range(0, 10).Select(i => new Tally(40 + (i % 3), 40))], 0.8)!;
        Assert.True(differ.Spread.Low > 0.6);
        Assert.True(alike.Spread.High < 0.3);
    }

    [Fact]
    public void Exposure_in_days_says_the_same_as_in_months()
    {
        Tally[] months = [new(3, 10), new(9, 10), new(0, 4)];
        var a = RateShrinkage.Of(months, 0.8)!.Units[2].Rate;
        var days = months.Select(tally => tally with { Exposure = tally.Exposure * 30 }).ToArray();
        var b = RateShrinkage.Of(days, 0.8)!.Units[2].Rate;
        Assert.Equal(a.Value / 30, b.Value, 1e-10);
        Assert.Equal(a.High / 30, b.High, 1e-9);
    }

    [Fact]
    public void No_exposure_at_all_says_nothing_and_a_bad_tally_is_named()
    {
        Assert.Null(RateShrinkage.Of([], 0.8));
        Assert.Null(RateShrinkage.Of([new(0, 0)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("tallies", () => RateShrinkage.Of([new(2, 0)], 0.8));
        Assert.Throws<ArgumentOutOfRangeException>("tallies", () => RateShrinkage.Of([new(1, double.MaxValue)], 0.8));
    }

    [Theory]
    [InlineData(0, 1e-9)]
    [InlineData(0, 1e12)]
    [InlineData(1_000_000, 1e-9)]
    [InlineData(1_000_000, 1)]
    [InlineData(1, 1e-9)]
    public void However_odd_the_record_every_number_is_one(int count, double exposure)
    {
        var rates = RateShrinkage.Of([new(count, exposure), new(1, 10), new(0, 3)], 0.8)!;
        foreach (var rate in rates.Units.Select(unit => unit.Rate).Append(rates.Unseen).Append(rates.FleetMean))
        {
            Assert.True(double.IsFinite(rate.Value) && double.IsFinite(rate.StandardError));
            Assert.True(rate.Low >= 0 && rate.Low < rate.High && double.IsFinite(rate.High));
        }
    }
}
