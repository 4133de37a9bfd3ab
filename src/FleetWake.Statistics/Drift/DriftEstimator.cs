namespace FleetWake.Statistics.Drift;

/// <summary>
/// The drift of a mounting from few, irregular and sometimes grossly wrong trials: a line through levels that may step at
/// events, robust against gross errors, with a prior from its fleet; solved in closed form as a finite Gaussian mixture.
/// </summary>
/// <remarks>
/// For a mixture of normal errors in a linear model see Box and Tiao 1968 (Biometrika 55:119); the rest is conjugate
/// Bayesian regression. Pure and free of shared state; same input, same output.
/// </remarks>
public static class DriftEstimator
{
    /// <summary>Assesses one mounting.</summary>
    /// <param name="series">Its history.</param>
    /// <param name="prior">What its fleet makes likely.</param>
    /// <param name="settings">What is taken for granted.</param>
    /// <returns>Never a NaN; without a usable trial the prior itself, marked as such.</returns>
    public static DriftAssessment Assess(DriftSeries series, SlopePrior prior, DriftSettings settings)
    {
        ArgumentNullException.ThrowIfNull(prior);
        ArgumentNullException.ThrowIfNull(settings);
        var sound = SoundSeries.Of(series);
        if (sound.Trials.Length == 0)
            return new() { RpmPer100Hours = Estimates.Drift(prior.Weights), Weights = prior.Weights.ToArray(), GrossChances = new double[series.Trials.Count], PriorOnly = true };

        var mixture = Mixture.Of(Design.Of(sound, settings, sound.Trials.Length), settings);
        var log = mixture.LogWeights(settings.Noise.Weights, settings.GrossChance);
        var found = Marginals.Of(mixture, log, prior.Weights);
        var weights = new double[SlopeGrid.Count];
        found.All.Weights(weights);
        for (var g = 0; g < weights.Length; g++) weights[g] /= found.Total;
        var gross = new double[series.Trials.Count];
        for (var i = 0; i < sound.Places.Length; i++) gross[sound.Places[i]] = found.Gross[i];
        var (level, sd) = found.All.Whole();
        var exit = sound.HasBand ? CrossingChance.Of(found, sound.MinRpm, sound.MaxRpm) : default;
        var nats = Estimates.Divergence(weights, prior.Weights);
        return new()
        {
            RpmPer100Hours = Estimates.Drift(weights),
            Weights = weights,
            Exit = sound.HasBand ? BandExit.Of(exit.Above) : null,
            ExitBelow = sound.HasBand ? BandExit.Of(exit.Below) : null,
            LevelRpm = Estimates.Normal(level, sd),
            Levels = found.All,
            Steps = StepEffect.Of(mixture, found),
            GrossChances = gross,
            LogEvidence = found.Scale + Math.Log(found.Total),
            Trials = sound.Trials.Length,
            OwnEvidenceNats = nats,
            PriorOnly = sound.Trials[^1].EngineHours <= sound.Trials[0].EngineHours || nats < DriftAssessment.LeastOwnEvidenceNats,
            HoursFell = sound.HoursFell,
        };
    }
}
