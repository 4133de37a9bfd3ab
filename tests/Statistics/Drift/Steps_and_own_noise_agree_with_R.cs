using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>
/// Steps and trials with noise of their own against lm with weights and against dense normal densities of every set of gross
/// errors: computed here with R 4.2.2, see Reference/PROVENANCE.md.
/// </summary>
public sealed class Steps_and_own_noise_agree_with_R
{
    private static readonly Dictionary<string, double> R = ReferenceTable.Rows("step_and_own_noise.csv").ToDictionary(r => $"{r[0]} {r[1]}", r => ReferenceTable.Number(r[2]));

    private static readonly DriftSettings s_settings = DriftSettings.Recommended with { Noise = NoiseNodes.Of([0.007], [1]) };

    private static readonly DriftSeries s_series = Series(5802);

    [Fact]
    public void Without_gross_errors_and_without_a_prior_of_the_drift_it_is_weighted_least_squares()
    {
        var even = SlopePrior.Of([.. Enumerable.Repeat(1.0, SlopeGrid.Count)]);

        var found = DriftEstimator.Assess(s_series, even, s_settings with { GrossChance = 1e-15 });

        Near("lm drift", found.RpmPer100Hours, 0.01); // each drift of the grid stands for a step of it
        Near("lm strike", found.Steps[0].Rpm);
        Near("lm repitch", found.Steps[1].Rpm);
        Near("lm level", found.LevelRpm!);
        Near("lm level 40 h before", found.LevelAt(-40)!);
        Near("lm level 250 h after", found.LevelAt(250)!);
    }

    [Fact]
    public void With_gross_errors_it_is_the_sum_over_their_sets()
    {
        var weights = new double[SlopeGrid.Count];
        weights[0 - SlopeGrid.Lowest] = weights[20 - SlopeGrid.Lowest] = 0.5;

        var found = DriftEstimator.Assess(Series(5480), SlopePrior.Of(weights), s_settings);

        Assert.Equal(R["sets log evidence"], found.LogEvidence, 1e-6);
        Assert.Equal(R["sets weight of 20"], found.Weights[20 - SlopeGrid.Lowest], 1e-7);
        for (var i = 0; i < 8; i++) Assert.Equal(R[$"sets gross {i + 1}"], found.GrossChances[i], 1e-7);
        Near("sets strike", found.Steps[0].Rpm);
        Near("sets repitch", found.Steps[1].Rpm);
        Near("sets level", found.LevelRpm!);
    }

    private static void Near(string name, Estimate actual, double sdWithin = 1e-4)
    {
        Assert.Equal(R[name + " mean"], actual.Value, 1e-4);
        Assert.Equal(R[name + " sd"], actual.StandardError, sdWithin);
    }

    private static DriftSeries Series(double seventh)
    {
        double[] hours = [0, 310, 480, 700, 1150, 1300, 1710, 1900], rpm = [5505, 5652, 5611, 5840, 5895, 5660, seventh, 5811];
        double[] air = [12, 18, 25, 15, 9, 22, 28, 17], load = [0, 120, -60, 0, 200, 40, -100, 0], own = [0, 55, 0, 0, 90, 0, 0, 30];
        return new(
            5000,
            6000,
            [.. hours.Select((h, i) => new DriftTrial(i, h, rpm[i], air[i], load[i], own[i]))],
            [new(4.5, StepKind.Repitch), new(2.5, StepKind.Strike)]);
    }
}
