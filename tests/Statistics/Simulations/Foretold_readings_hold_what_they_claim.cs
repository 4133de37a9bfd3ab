using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>80 % intervals of the next reading in fleets that break the estimator's own assumptions: see <see cref="InventedFleet"/>.</summary>
public class Foretold_readings_hold_what_they_claim
{
    [Fact]
    public void Over_all_numbers_of_trials_80_times_in_100_give_or_take_5()
    {
        var held = Enumerable.Range(0, 12).SelectMany(fleet => Outcomes(fleet, 60)).ToList();
        Assert.True(held.Count > 300);
        Assert.InRange(held.Average(h => h ? 1.0 : 0), 0.75, 0.85);
    }

    [Fact]
    public void It_is_wider_the_farther_ahead_and_the_coarser_the_gauge_and_about_the_level_that_is_foretold()
    {
        var (found, settings) = Assessed(new InventedFleet(3).Draw(40, 10, uniform: false)[0].Member);
        double Width(double hours, double gauge, double level = 0.8) => ForetoldReading.Of(found, settings, hours, gauge, level) is { } e ? e.High - e.Low : 0;
        Assert.True(Width(100, 3) > Width(10, 3));
        Assert.True(Width(10, 30) > Width(10, 3));
        Assert.True(Width(10, 3, 0.95) > Width(10, 3));
        Assert.Equal(found.LevelAt(50)!.Value, ForetoldReading.Of(found, settings, 50, 3, 0.8)!.Value, 2.0);
        Assert.Null(ForetoldReading.Of(DriftEstimator.Assess(new(5000, 6000, [], []), FleetPrior.Fit([], WearExpectation.Trade, DriftSettings.Recommended).Group("aluminium", "salt"), settings), settings, 10, 3, 0.8));
        Assert.Throws<ArgumentOutOfRangeException>(() => ForetoldReading.Of(found, settings, double.NaN, 3, 0.8));
    }

    private static (DriftAssessment Found, DriftSettings Settings) Assessed(FleetMember member)
    {
        var (own, settings) = FleetPrior.Fit([member], WearExpectation.Trade, DriftSettings.Recommended).Member(member);
        return (DriftEstimator.Assess(member.Series, own, settings), settings);
    }

    /// <summary>The last trial of each mounting is foretold from those before it, where nothing was recorded between.</summary>
    private static IEnumerable<bool> Outcomes(int fleet, int mountings)
    {
        var members = new InventedFleet(fleet).Draw(mountings, trials: null, uniform: fleet % 2 == 1)
            .Select(m => (m.Member, Next: m.Member.Series.Trials[^1], Known: m.Member with { Series = m.Member.Series with { Trials = [.. m.Member.Series.Trials.SkipLast(1)] } }))
            .Where(m => m.Known.Series.Trials.Count > 0 && !m.Member.Series.Events.Any(e => e.Week >= m.Known.Series.Trials[^1].Week)).ToList();
        var prior = FleetPrior.Fit([.. members.Select(m => m.Known)], WearExpectation.Trade, DriftSettings.Recommended);
        foreach (var (_, next, known) in members)
        {
            var (own, settings) = prior.Member(known);
            var foretold = ForetoldReading.Of(DriftEstimator.Assess(known.Series, own, settings), settings, next.EngineHours - known.Series.Trials[^1].EngineHours, 0.3, 0.8)!;
            yield return foretold.Low <= next.Rpm && next.Rpm <= foretold.High;
        }
    }
}
