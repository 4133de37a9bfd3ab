using FleetWake.Statistics.Use;

namespace FleetWake.Statistics.Tests.Use;

/// <summary>Hours to an exit become a date.</summary>
public class When_it_leaves_its_band
{
    private static readonly DateOnly s_day = new(2025, 3, 1);

    private static UsePosterior Sharp(double hoursPerDay) => UsePosterior.Of(Uses.Flat(hoursPerDay, 1e6, lump: 0.1), []);

    private static Func<double, double> After(double hours) => h => h >= hours ? 1 : 0;

    [Theory]
    [InlineData(100, 0, 2, 50)]
    [InlineData(100, 40, 2, 30)]
    [InlineData(1500, 0, 3, 500)]
    public void Where_nothing_is_in_doubt_it_is_hours_over_rate(double exit, double since, double rate, int days)
    {
        var date = ExitDate.Of(After(exit), since, s_day, Sharp(rate));
        var chance = (int)Math.Ceiling(1.2816 * Math.Sqrt((exit - since) * 0.1) / rate); // what lumps of a tenth of an hour leave open
        Assert.InRange(date.Median!.Value.DayNumber - s_day.DayNumber, days - 1, days + 1);
        Assert.InRange(date.Earliest!.Value.DayNumber - s_day.DayNumber, days - chance - 1, days);
        Assert.InRange(date.Latest!.Value.DayNumber - s_day.DayNumber, days, days + chance + 1);
    }

    [Fact]
    public void What_has_happened_already_is_dated_by_the_reading()
    {
        var date = ExitDate.Of(After(100), 100, s_day, Sharp(2));
        Assert.Equal(new ExitDate(s_day, s_day, s_day, 0.8), date);
    }
}
