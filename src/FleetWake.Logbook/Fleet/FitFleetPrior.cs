using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Response;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Statistics.Use;

namespace FleetWake.Logbook.Fleet;

/// <summary>Fits what a fleet has shown of itself. Pure: the same histories in any order give the same fit.</summary>
public static class FitFleetPrior
{
    /// <summary>Name and version of the method.</summary>
    public const string Method = "fleet-1";

    /// <summary>Fits a fleet.</summary>
    /// <param name="fleet">The history of every boat, those that left the fleet too.</param>
    /// <param name="number">The number that it gets.</param>
    /// <param name="entry">The stamp that it gets.</param>
    public static FleetPriorFitted Of(IReadOnlyCollection<BoatHistory> fleet, int number, Entry entry)
    {
        ArgumentNullException.ThrowIfNull(fleet);
        // By boat, so that no result hangs on the order in which histories were read.
        var boats = fleet.OrderBy(h => h.Boat, StringComparer.Ordinal).ToList();
        // First how engines answer the air: it moves the readings that the rest is fitted to.
        var gains = Gains(boats);
        var priors = FleetPriors.Of(new FleetPriorFitted(entry, 0, Method, FleetPriors.Trade.Drift.Figures(), SeasonOfUse.Trade, FleetPriors.UsualAlarm, gains, 0, 0, 0));
        List<FleetMember> members = [.. boats.SelectMany(h => h.Mountings.Select(m => AssessMounting.Member(h, m, priors))).OfType<FleetMember>()];
        var drift = FleetPrior.Fit(members, WearExpectation.Trade, DriftSettings.Recommended);
        return new(
            entry,
            number,
            Method,
            drift.Figures(),
            SeasonOfUse.Fit([.. boats.SelectMany(h => h.Engines.Where(e => e.To is null).Select(e => MeterUse.Stretches(h.Meters.GetValueOrDefault(e.Engine))))]),
            AlarmCalibration.Of([.. members.Select(m => m.Series)], drift.Settings),
            gains,
            members.Select(m => m.Boat).Distinct(StringComparer.Ordinal).Count(),
            members.Count,
            members.Sum(m => m.Series.Trials.Count));
    }

    private static List<LearnedGain> Gains(IReadOnlyList<BoatHistory> boats) =>
    [
        .. boats.SelectMany(KnownChanges.Of).GroupBy(k => k.Model, StringComparer.Ordinal).OrderBy(f => f.Key, StringComparer.Ordinal)
            .Select(f => (Model: f.Key, Learned: GainLearning.Learn([.. f.SelectMany(k => k.Power)], [.. f.SelectMany(k => k.Pitch)])))
            .Where(f => f.Learned.Steps > 0)
            .Select(f => new LearnedGain(f.Model, f.Learned.Gain.Value, f.Learned.Gain.StandardDeviation, f.Learned.Steps)),
    ];
}
