namespace FleetWake.Statistics.Drift;

/// <summary>
/// An alarm that may be looked at after every trial: the likelihood of drift against that of none, E_n = sum_g alt(s_g)
/// L_n(s_g) / L_n(0). Under no drift E_n is a martingale with mean 1, so the chance that it ever reaches A is at most 1/A
/// (Ville 1939; for such e-processes see Ramdas and others 2023, Statistical Science 38:576).
/// </summary>
public static class DriftAlarm
{
    /// <summary>
    /// The drifts looked for: 10 to 30 rpm per 100 h, all alike. In simulated fleets it finds as much at 20 and at 40 as tests
    /// that know the drift; with wider or higher ones it finds less at 20, with the fleet's own prior it can fire on that.
    /// </summary>
    public static SlopePrior Alternative { get; } = Even(10, 30);

    /// <summary>
    /// log E_n [1] that raises an alarm, unless a fleet's own schedule asks for more (<see cref="AlarmCalibration"/>). On both
    /// sets of the public half of the study it brought 31 false alarms in 930 boat-years, 0.033 a boat-year, more than in fleets
    /// simulated here, and found 0.638 of the drifts of 40 and 0.386 of those of 20 rpm per 100 h; 1.35 brought 35 in 929.
    /// Ville's bound alone promises at most 0.25 false alarms a mounting.
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
        var evidence = new List<DriftEvidence>(series.Trials.Count);
        Follow(series, settings, (trial, likelihood) => evidence.Add(new(trial, evidence.Count == 0 ? 0 : Log(alternative, likelihood))));
        return evidence;
    }

    /// <summary>The same for several alternatives at once; one list for each.</summary>
    internal static DriftEvidence[][] Follow(DriftSeries series, SlopePrior[] alternatives, DriftSettings settings)
    {
        var evidence = Array.ConvertAll(alternatives, _ => new List<DriftEvidence>(series.Trials.Count));
        Follow(series, settings, (trial, likelihood) =>
        {
            for (var a = 0; a < alternatives.Length; a++) evidence[a].Add(new(trial, evidence[a].Count == 0 ? 0 : Log(alternatives[a], likelihood)));
        });
        return Array.ConvertAll(evidence, e => e.ToArray());
    }

    private static void Follow(DriftSeries series, DriftSettings settings, Action<int, double[]> tell)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var sound = SoundSeries.Of(series);
        var likelihood = new double[SlopeGrid.Count];
        for (var n = 1; n <= sound.Trials.Length; n++)
        {
            // The first trial alone says nothing.
            if (n > 1)
            {
                var mixture = Mixture.Of(Design.Of(sound, settings, n), settings);
                SlopeLikelihood.Sum(mixture.Components, mixture.LogWeights(settings.Noise.Weights, settings.GrossChance), likelihood);
            }

            tell(sound.Places[n - 1], likelihood);
        }
    }

    private static SlopePrior Even(double from, double to)
    {
        var weights = new double[SlopeGrid.Count];
        for (var g = 0; g < weights.Length; g++) weights[g] = SlopeGrid.At(g) >= from && SlopeGrid.At(g) <= to ? 1 : 0;
        return SlopePrior.Of(weights);
    }

    private static double Log(SlopePrior alternative, double[] likelihood)
    {
        var e = 0.0;
        for (var g = 0; g < likelihood.Length; g++) e += alternative.Weights[g] * likelihood[g];
        // A likelihood of no drift too small to be told from zero is beyond any threshold.
        return Math.Log(Math.Max(e, 1e-300)) - Math.Log(Math.Max(likelihood[SlopeGrid.Zero], 1e-300));
    }

    /// <summary>The first trial at which the evidence reaches a threshold, or null.</summary>
    /// <param name="evidence">As <see cref="Follow(DriftSeries, SlopePrior, DriftSettings)"/> gives.</param>
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
