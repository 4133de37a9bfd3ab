namespace FleetWake.Statistics.Drift;

/// <summary>What the events between two trials did to the level of the RPM: what a strike cost, what a repitch gave back.</summary>
/// <param name="Events">
/// Their places in <see cref="DriftSeries.Events"/> as given, in the order of time: all between the same two trials, for
/// only what they did together can be seen.
/// </param>
/// <param name="Rpm">The step [1/min], up positive: posterior mean and sd with 80 % limits, drift and weather allowed for.</param>
/// <param name="OwnEvidenceNats">
/// How far the trials moved it from what such events do [nat]: the Kullback-Leibler divergence of a normal with the
/// posterior's moments from the prior's normal. Near 0, the figure is what such events do anywhere, not what these did.
/// </param>
public sealed record StepEffect(IReadOnlyList<int> Events, Estimate Rpm, double OwnEvidenceNats)
{
    /// <summary>
    /// The trials alone, the belief about such events taken out of the estimate again, leave no doubt (80 %) which way it went.
    /// Else nobody may say that it cost or gave anything.
    /// </summary>
    public bool ShownByTrials { get; init; }

    // Lighter components move no digit that is shown: all that are left out together weigh less than one in a thousand.
    private const double Negligible = 1e-7;

    internal static IReadOnlyList<StepEffect> Of(Mixture mixture, Marginals marginals)
    {
        var design = mixture.Design;
        if (design.Steps.Count == 0) return [];
        var effects = new StepEffect[design.Steps.Count];
        for (var k = 0; k < effects.Length; k++)
        {
            var fits = Array.ConvertAll(mixture.Fits, fit => new StepFit(fit, design, k + 1));
            double weight = 0, first = 0, second = 0;
            for (var c = 0; c < mixture.Components.Length; c++)
            {
                var drift = marginals.Drifts![c];
                if (!(drift.Weight > Negligible * marginals.Total)) continue;
                var (atNone, perSlope, variance) = fits[mixture.Components[c].Node].Of(mixture.Components[c]);
                weight += drift.Weight;
                first += (drift.Weight * atNone) + (perSlope * drift.First);
                second += (drift.Weight * ((atNone * atNone) + variance)) + (2 * atNone * perSlope * drift.First) + (perSlope * perSlope * drift.Second);
            }

            effects[k] = Of(design.Steps[k], first / weight, second / weight);
        }

        return effects;
    }

    private static StepEffect Of(in SoundSeries.Step step, double aboveMean, double square)
    {
        var variance = Math.Max(1e-12, square - (aboveMean * aboveMean));
        var share = variance / step.Variance;
        var nats = 0.5 * (share + (aboveMean * aboveMean / step.Variance) - 1 - Math.Log(share));
        return new(step.Events, Estimates.Normal(step.Mean + aboveMean, Math.Sqrt(variance)), Math.Max(0, nats)) { ShownByTrials = Shown(step, step.Mean + aboveMean, variance) };
    }

    /// <summary>Precisions of normals add: what the belief put in is taken out.</summary>
    private static bool Shown(in SoundSeries.Step step, double mean, double variance)
    {
        var precision = (1 / variance) - (1 / step.Variance);
        if (!(precision > 0)) return false;
        var own = ((mean / variance) - (step.Mean / step.Variance)) / precision;
        return Math.Abs(own) > Estimates.Z10 / Math.Sqrt(precision);
    }
}
