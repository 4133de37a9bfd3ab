using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>
/// Four mountings worked out by another program (numpy), one component of which was held against a dense multivariate
/// normal density. Source and status: Reference/PROVENANCE.md, drift_vectors.json: computed, 1e-6.
/// </summary>
public sealed class The_worked_cases
{
    public static TheoryData<string> Ids => DriftVectors.Ids;

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_drift_and_its_interval(string id)
    {
        var m = DriftVectors.Of(id);

        var found = DriftEstimator.Assess(DriftVectors.Series(m), DriftVectors.Prior, DriftVectors.Settings);

        Near(DriftVectors.Number(m, "posterior_mean"), found.RpmPer100Hours.Value);
        Near(DriftVectors.Number(m, "q10"), found.RpmPer100Hours.Low);
        Near(DriftVectors.Number(m, "q90"), found.RpmPer100Hours.High);
        Near(DriftVectors.Number(m, "q50"), SlopeGrid.Quantile(found.Weights.ToArray(), 0.5));
        Near(DriftVectors.Number(m, "log_evidence"), found.LogEvidence);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void Which_trials_are_gross_errors(string id)
    {
        var m = DriftVectors.Of(id);

        var found = DriftEstimator.Assess(DriftVectors.Series(m), DriftVectors.Prior, DriftVectors.Settings);

        Assert.All(DriftVectors.Numbers(m, "outlier_prob").Zip(found.GrossChances), p => Assert.Equal(p.First, p.Second, 1e-6));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void When_the_band_is_left(string id)
    {
        var m = DriftVectors.Of(id);

        var exit = DriftEstimator.Assess(DriftVectors.Series(m), DriftVectors.Prior, DriftVectors.Settings).Exit!;

        // There a level outside the band comes back in when the drift is below nothing, and the chance is read between two
        // places of the grid of hours; here out is out, and the chance is exact. Sets of gross
        // errors with less than 0.2 % of the weight share one level.
        Assert.Equal(DriftVectors.Number(m, "exit_q10"), exit.EarliestHours, 0.05);
        Assert.Equal(DriftVectors.Number(m, "exit_q50"), exit.MedianHours, 0.05);
        Assert.Equal(DriftVectors.Number(m, "exit_q90"), exit.LatestHours, 0.05);
        Assert.Equal(DriftVectors.Number(m, "exit_cdf_500h"), exit.Within500HoursChance, 3e-4);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_evidence_for_drift_after_each_trial(string id)
    {
        var m = DriftVectors.Of(id);

        var log = DriftAlarm.Follow(DriftVectors.Series(m), DriftVectors.Alternative, DriftVectors.Settings);

        Assert.All(DriftVectors.Numbers(m, "log_LR_sequence_from_trial2").Zip(log.Skip(1)), p => Assert.Equal(p.First, p.Second.Log, 1e-6));
    }

    private static void Near(double expected, double actual) => Assert.Equal(expected, actual, 1e-6 * Math.Max(1, Math.Abs(expected)));
}
