using FleetWake.Statistics.Use;
using MathNet.Numerics.Distributions;

namespace FleetWake.Statistics.Tests.Use;

/// <summary>
/// 80 % intervals of dates of boats that break the method's assumptions. By chance alone the share of some 1,900 dates has
/// a standard deviation of one to two hundredths, four dates sharing a boat. Hours known within 2 % leave all to the use.
/// </summary>
public class Dates_hold_what_they_claim(ITestOutputHelper output)
{
    [Theory]
    [InlineData(12, false, 0.0, 0.5)]
    [InlineData(12, true, 0.0, 0.5)]
    [InlineData(12, true, 0.1, 0.02)]
    [InlineData(12, false, 0.1, 0.02)]
    [InlineData(3, false, 0.1, 0.5)]
    public void Eighty_times_in_a_hundred(int boats, bool laidUp, double year, double spread)
    {
        var outcomes = Enumerable.Range(1, 480 / boats).SelectMany(fleet => Outcomes(fleet, boats, laidUp, year, spread)).ToArray();
        var (early, late) = (outcomes.Count(o => o < 0) / (double)outcomes.Length, outcomes.Count(o => o > 0) / (double)outcomes.Length);
        output.WriteLine(FormattableString.Invariant($"{outcomes.Length} dates: {early:F3} too early, {late:F3} too late"));
        Assert.InRange(1 - early - late, 0.76, 0.84);
        Assert.InRange(early - late, -0.05, 0.05);
    }

    private static IEnumerable<int> Outcomes(int beginning, int boats, bool laidUp, double year, double spread)
    {
        var harbour = new InventedHarbour(beginning, laidUp, year);
        var now = 366 + (int)harbour.Uniform(0, 366);
        var days = Enumerable.Range(0, boats).Select(_ => harbour.Days(years: 13)).ToArray();
        var read = days.Select(d => harbour.Read(d, Math.Max(0, now - (int)harbour.Uniform(60, 700)), now)).ToArray();
        var season = SeasonOfUse.Fit(read);
        for (var b = 0; b < boats; b++)
        {
            var use = UsePosterior.Of(season, read[b]);
            for (var k = 0; k < 4; k++)
            {
                var median = Math.Exp(harbour.Uniform(Math.Log(30), Math.Log(600))); // [h]
                var exit = median * Math.Exp(spread * harbour.Normally());
                var date = ExitDate.Of(
                    h => h > 0 ? Normal.CDF(Math.Log(median), spread, Math.Log(h)) : 0, 0, InventedHarbour.FirstDay.AddDays(now), use);
                yield return Outcome(date, days[b], now, exit);
            }
        }
    }

    private static int Outcome(ExitDate date, double[] days, int now, double exit)
    {
        var (day, run) = (now, 0.0);
        while (run < exit && day < days.Length - 1) run += days[++day];
        DateOnly? truth = run < exit ? null : InventedHarbour.FirstDay.AddDays(day);
        if (truth is null) return date.Latest is null ? 0 : 1;
        return date.Earliest is null || truth < date.Earliest ? -1 : truth > date.Latest ? 1 : 0;
    }
}
