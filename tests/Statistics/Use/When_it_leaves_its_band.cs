using CsCheck;
using FleetWake.Statistics.Use;
using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics.Tests.Use;

/// <summary>Hours to an exit become a date. Properties of any sensible forecast, and one sum by another way; no source.</summary>
public class When_it_leaves_its_band
{
    private static readonly DateOnly s_day = new(2025, 3, 1);

    /// <summary>Median hours, spread of their logarithm, hours run since, day, hours of the boat's last two years, winter.</summary>
    private static readonly Gen<(double Median, double Spread, double Since, int Day, double Own, bool Winter)> s_any =
        Gen.Select(Gen.Double[5, 3000], Gen.Double[0.01, 2], Gen.Double[0, 300], Gen.Int[0, 2000], Gen.Double[0, 3000], Gen.Bool);

    [Theory]
    [InlineData(100, 0, 2, 50)]
    [InlineData(100, 40, 2, 30)]
    [InlineData(1500, 0, 3, 500)]
    public void Where_nothing_is_in_doubt_it_is_hours_over_rate(double exit, double since, double rate, int days)
    {
        var date = ExitDate.Of(Sharp(exit), since, s_day, UsePosterior.Of(Uses.Sure(rate, 1e6, lump: 0.1), []));
        var chance = (int)Math.Ceiling(1.2816 * Math.Sqrt((exit - since) * 0.1) / rate); // what lumps of a tenth of an hour leave open
        Assert.InRange(date.Median!.Value.DayNumber - s_day.DayNumber, days - 1, days + 1);
        Assert.InRange(date.Earliest!.Value.DayNumber - s_day.DayNumber, days - chance - 1, days);
        Assert.InRange(date.Latest!.Value.DayNumber - s_day.DayNumber, days, days + chance + 1);
    }

    /// <summary>P(out by that date) = E chance(hours run by then), summed over hours a tenth of an hour apart.</summary>
    [Fact]
    public void Each_date_is_the_first_by_which_it_has_left_with_its_chance() => s_any.Sample(s =>
    {
        var use = Use(s.Own, s.Winter, 0);
        var (day, chance) = (s_day.AddDays(s.Day), After(s.Median, s.Spread));
        var date = ExitDate.Of(chance, s.Since, day, use);
        foreach (var (at, share) in new[] { (date.Earliest, 0.1), (date.Median, 0.5), (date.Latest, 0.9) })
        {
            if (at is not { } by) continue;
            Assert.InRange(Left(by), share - 0.01, 1);
            if (by > day) Assert.InRange(Left(by.AddDays(-1)), 0, share + 0.01);
        }

        double Left(DateOnly by)
        {
            var (sum, before) = (chance(s.Since), chance(s.Since));
            for (var h = 0.0; s.Since + h < ExitDate.HorizonHours; h += 0.5)
            {
                var next = chance(s.Since + h + 0.5);
                if (next - before > 1e-9) sum += (next - before) * use.ChanceRunAtLeast(day, by, h + 0.25);
                before = next;
            }

            return sum;
        }
    }, iter: 40);

    [Fact]
    public void A_later_chance_is_never_earlier_and_no_date_before_the_reading_nor_after_ten_years() => s_any.Sample(s =>
    {
        var day = s_day.AddDays(s.Day);
        var date = ExitDate.Of(After(s.Median, s.Spread), s.Since, day, Use(s.Own, s.Winter, 0));
        DateOnly?[] dates = [day, date.Earliest, date.Median, date.Latest, day.AddYears(10)];
        Assert.Equal(dates.OfType<DateOnly>().Order(), dates.OfType<DateOnly>());
        Assert.False(date.Earliest is null && date.Median is not null);
        Assert.False(date.Median is null && date.Latest is not null);
        Assert.Equal(0.8, date.Level);
    }, iter: 1000);

    [Fact]
    public void More_hours_a_month_never_make_it_later() => s_any.Sample(s =>
    {
        var day = s_day.AddDays(s.Day);
        ExitDate At(double own) => ExitDate.Of(After(s.Median, s.Spread), s.Since, day, Use(own, s.Winter, 0));
        var (few, many) = (At(s.Own), At((s.Own * 1.2) + 10));
        NotLater(many.Earliest, few.Earliest);
        NotLater(many.Median, few.Median);
        NotLater(many.Latest, few.Latest);

        // A rounding may name the next day.
        static void NotLater(DateOnly? many, DateOnly? few) => Assert.True(few is null || many <= few.Value.AddDays(1), $"{many} after {few}");
    }, iter: 500);

    /// <summary>Four years, so that every 29 February has its like.</summary>
    [Fact]
    public void Everything_four_years_later_is_four_years_later() => s_any.Sample(s =>
    {
        var day = s_day.AddDays(s.Day);
        var (now, then) = (At(0), At(4));
        Assert.Equal((now.Earliest?.AddYears(4), now.Median?.AddYears(4), now.Latest?.AddYears(4)), (then.Earliest, then.Median, then.Latest));
        ExitDate At(int years) => ExitDate.Of(After(s.Median, s.Spread), s.Since, day.AddYears(years), Use(s.Own, s.Winter, years));
    }, iter: 300);

    [Fact]
    public void What_has_happened_already_is_dated_by_the_reading() =>
        Assert.Equal(
            new ExitDate(s_day, s_day, s_day, 0.8), ExitDate.Of(Sharp(100), 100, s_day, UsePosterior.Of(SeasonOfUse.Trade, [])));

    [Theory]
    [InlineData("2025-03-01")]
    [InlineData("2025-10-15")]
    [InlineData("2025-12-31")]
    public void A_boat_that_is_laid_up_leaves_in_the_running_season(string day)
    {
        var date = ExitDate.Of(After(40, 0.7), 0, DateOnly.Parse(day, System.Globalization.CultureInfo.InvariantCulture), UsePosterior.Of(Uses.Summer(1, 3), []));
        Assert.All([date.Earliest, date.Median, date.Latest], d => Assert.InRange(d!.Value.Month, 5, 9));
    }

    [Fact]
    public void An_engine_that_never_runs_has_no_date()
    {
        var still = UsePosterior.Of(SeasonOfUse.Trade, [new(s_day.AddYears(-3), s_day, 0)]);
        Assert.Equal(new ExitDate(null, null, null, 0.8), ExitDate.Of(Sharp(100), 0, s_day, still));
        var nowhere = UsePosterior.Of(SeasonOfUse.Trade with { MonthShares = new double[12] }, []);
        Assert.Equal(new ExitDate(null, null, null, 0.8), ExitDate.Of(Sharp(1), 0, s_day, nowhere));
    }

    [Fact]
    public void Beyond_the_hours_that_were_forecast_nothing_is_said()
    {
        var busy = UsePosterior.Of(Uses.Sure(20, 1000), []);
        Assert.Equal(new ExitDate(null, null, null, 0.8), ExitDate.Of(Sharp(2001), 0, s_day, busy));
        Assert.NotNull(ExitDate.Of(Sharp(1999), 0, s_day, busy).Latest);
        Assert.Null(ExitDate.Of(h => h >= 50 ? 0.6 : 0, 0, s_day, busy).Latest);
    }

    [Fact]
    public void Odd_figures_give_no_odd_dates()
    {
        var use = UsePosterior.Of(SeasonOfUse.Trade, []);
        Assert.Equal(ExitDate.Of(Sharp(100), 0, s_day, use), ExitDate.Of(Sharp(100), double.NaN, s_day, use));
        Assert.Equal(ExitDate.Of(Sharp(100), 0, s_day, use), ExitDate.Of(Sharp(100), -7, s_day, use));
        Assert.Equal(new ExitDate(null, null, null, 0.8), ExitDate.Of(_ => double.NaN, double.PositiveInfinity, s_day, use));
        Assert.Equal(ExitDate.Of(Sharp(100), 0, s_day, use), ExitDate.Of(h => h >= 100 ? 7 : h > 50 ? double.NaN : -1, 0, s_day, use));
        var end = DateOnly.MaxValue;
        Assert.Equal(new ExitDate(null, null, null, 0.8), ExitDate.Of(Sharp(100), 0, end, use));
        Assert.Equal(end, ExitDate.Of(Sharp(100), 100, end, use).Latest);
        Assert.True(ExitDate.Of(Sharp(10), 0, end.AddDays(-400), use).Median > end.AddDays(-400));
    }

    private static Func<double, double> Sharp(double hours) => h => h >= hours ? 1 : 0;

    private static Func<double, double> After(double median, double spread) =>
        h => h > 0 ? Normal.CDF(Math.Log(median), spread, Math.Log(h)) : 0;

    private static UsePosterior Use(double own, bool winter, int years) => UsePosterior.Of(
        winter ? Uses.Summer(1, 3) : Uses.Sure(1, 3),
        [new(new DateOnly(2023, 1, 1).AddYears(years), new DateOnly(2025, 1, 1).AddYears(years), own)]);
}
