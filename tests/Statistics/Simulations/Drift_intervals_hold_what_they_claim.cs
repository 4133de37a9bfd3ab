using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>
/// 80 % intervals of drift in fleets that break the estimator's own assumptions, half of them with log-normal and half with
/// uniform wear. FLEETWAKE_LONG_SIMULATIONS=1 runs some 4 000 mountings with each number of
/// trials and prints the table.
/// </summary>
public class Drift_intervals_hold_what_they_claim(ITestOutputHelper output)
{
    private static readonly bool s_long = Environment.GetEnvironmentVariable("FLEETWAKE_LONG_SIMULATIONS") == "1";

    [Fact]
    public void Over_all_numbers_of_trials_80_times_in_100_give_or_take_5()
    {
        var outcomes = Enumerable.Range(0, 12).SelectMany(fleet => Outcomes(fleet, 60, trials: null)).ToArray();
        Assert.InRange(outcomes.Average(o => o.Held ? 1.0 : 0), 0.75, 0.85);
        Assert.InRange(outcomes.Average(o => o.Error), -1.5, 1.5);
    }

    [Fact]
    public void For_each_number_of_trials_when_there_is_time()
    {
        if (!s_long) return;
        var byTrials = Enumerable.Range(1000, 460).SelectMany(fleet => Outcomes(fleet, 100, trials: null)).ToLookup(o => o.Trials);
        foreach (var outcomes in byTrials.OrderBy(o => o.Key))
        {
            output.WriteLine(FormattableString.Invariant(
                $"{outcomes.Key,2} trials, {outcomes.Count()} mountings: held {outcomes.Average(o => o.Held ? 1.0 : 0):F3}, root mean square error {Math.Sqrt(outcomes.Average(o => o.Error * o.Error)):F2} rpm per 100 h"));
        }

        Assert.All(byTrials, outcomes => Assert.InRange(outcomes.Average(o => o.Held ? 1.0 : 0), 0.76, 0.84));
    }

    /// <summary>Without drift the chance of an alarm, ever, is bounded by exp(-threshold); so loosely that it is held under worse noise.</summary>
    [Fact]
    public void Alarms_are_rarer_than_their_bound_without_drift_and_common_with_much()
    {
        static double Share(double drift) => Enumerable.Range(0, 6).SelectMany(f => Alarms(new InventedFleet(700 + f).Draw(60, 12, uniform: false, drift))).Average();

        Assert.InRange(Share(0), 0, 0.10);
        Assert.InRange(Share(40), 0.6, 1);
    }

    private static IEnumerable<double> Alarms(List<(FleetMember Member, double Drift)> members)
    {
        var settings = FleetPrior.Fit([.. members.Select(m => m.Member)], WearExpectation.Trade, DriftSettings.Recommended).Settings;
        return members.Select(m => DriftAlarm.Follow(m.Member.Series, DriftAlarm.Alternative, settings))
            .Select(evidence => DriftAlarm.First(evidence, DriftAlarm.RecommendedThreshold) is null ? 0.0 : 1);
    }

    private static IEnumerable<(int Trials, bool Held, double Error)> Outcomes(int fleet, int mountings, int? trials)
    {
        var members = new InventedFleet(fleet).Draw(mountings, trials, uniform: fleet % 2 == 1);
        var prior = FleetPrior.Fit([.. members.Select(m => m.Member)], WearExpectation.Trade, DriftSettings.Recommended);
        foreach (var (member, drift) in members)
        {
            var (own, settings) = prior.Member(member);
            var found = DriftEstimator.Assess(member.Series, own, settings).RpmPer100Hours;
            yield return (member.Series.Trials.Count, found.Low <= drift && drift <= found.High, found.Value - drift);
        }
    }
}
