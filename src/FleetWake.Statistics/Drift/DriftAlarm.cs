namespace FleetWake.Statistics.Drift;

/// <summary>
/// An alarm that may be looked at after every trial: the likelihood of drift against that of none, E_n = sum_g alt(s_g)
/// L_n(s_g) / L_n(0). Under no drift E_n is a martingale with mean 1, so the chance that it ever reaches A is at most 1/A
/// (Ville 1939; for such e-processes see Ramdas and others 2023, Statistical Science 38:576).
/// </summary>
public static class DriftAlarm
{
    /// <summary>The alternative recommended: half the group's prior cut to 5 rpm per 100 h or more, half even from 5 to 60.</summary>
    /// <param name="group">Prior of the mounting's group.</param>
    public static SlopePrior Alternative(SlopePrior group)
    {
        ArgumentNullException.ThrowIfNull(group);
        var weights = new double[SlopeGrid.Count];
        double of = 0;
        for (var g = 0; g < weights.Length; g++) of += SlopeGrid.At(g) >= 5 ? group.Weights[g] : 0;
        for (var g = 0; g < weights.Length; g++)
        {
            var s = SlopeGrid.At(g);
            weights[g] = (s >= 5 ? 0.5 * group.Weights[g] / of : 0) + (s is >= 5 and <= 60 ? 0.5 / 56 : 0);
        }

        return SlopePrior.Of(weights);
    }

    /// <summary>
    /// log E_n [1] that raises an alarm: some 0.04 false alarms a boat-year in simulated fleets with eight trials a year.
    /// A fleet of another rhythm calibrates its own.
    /// </summary>
    public const double RecommendedThreshold = 1.4;

    /// <summary>log E_n after each trial, from the trials up to it alone.</summary>
    /// <param name="series">The mounting's history.</param>
    /// <param name="alternative">What drift is looked for.</param>
    /// <param name="settings">What is taken for granted.</param>
    /// <returns>One for each usable trial in the order of time, the first of them without evidence.</returns>
    public static IReadOnlyList<DriftEvidence> Follow(DriftSeries series, SlopePrior alternative, DriftSettings settings)
    {
        ArgumentNullException.ThrowIfNull(alternative);
        ArgumentNullException.ThrowIfNull(settings);
        var sound = SoundSeries.Of(series);
        var evidence = new DriftEvidence[sound.Trials.Length];
        var likelihood = new double[SlopeGrid.Count];
        for (var n = 1; n <= evidence.Length; n++)
        {
            var mixture = Mixture.Of(Design.Of(sound, settings, n), settings);
            SlopeLikelihood.Sum(mixture.Components, mixture.LogWeights(settings.Noise.Weights, settings.GrossChance), likelihood);
            var e = 0.0;
            for (var g = 0; g < likelihood.Length; g++) e += alternative.Weights[g] * likelihood[g];
            // A likelihood of no drift too small to be told from zero is beyond any threshold.
            var log = Math.Log(Math.Max(e, 1e-300)) - Math.Log(Math.Max(likelihood[SlopeGrid.Zero], 1e-300));
            evidence[n - 1] = new(sound.Places[n - 1], n == 1 ? 0 : log);
        }

        return evidence;
    }

    /// <summary>The first trial at which the evidence reaches a threshold, or null.</summary>
    /// <param name="evidence">As <see cref="Follow"/> gives.</param>
    /// <param name="threshold">The threshold of log E_n [1].</param>
    public static DriftEvidence? First(IReadOnlyList<DriftEvidence> evidence, double threshold)
    {
        foreach (var e in evidence)
        {
            if (e.Log >= threshold) return e;
        }

        return null;
    }
}

/// <summary>Evidence for drift after a trial.</summary>
/// <param name="Trial">The trial's place in the series as given.</param>
/// <param name="Log">log E_n [1]: above 0 speaks for drift, below for none.</param>
public readonly record struct DriftEvidence(int Trial, double Log);
