namespace FleetWake.Statistics.Life;

/// <summary>
/// The share that outlives each age, from lifetimes of which some have not ended yet: Kaplan and Meier, J. Am. Statist.
/// Assoc. 53 (1958) 457-481, with the standard error of Greenwood (1926); both cited from memory.
/// </summary>
public static class KaplanMeier
{
    /// <summary>
    /// S(t) = product over ages t_i up to t of 1 - d_i / n_i, with variance S^2 sum d_i / (n_i (n_i - d_i)). One that
    /// was last seen at an age at which another ended was at risk there.
    /// </summary>
    /// <param name="lives">The lifetimes, in any order.</param>
    /// <param name="level">Level of the limits, above 0 and up to 0.9999, such as 0.8.</param>
    /// <param name="limits">How the limits are laid.</param>
    /// <returns>
    /// The curve; null when there is no lifetime at all. None that ended makes a curve without a step, whose limits
    /// still say how little a few hours of a few props prove.
    /// </returns>
    /// <remarks>
    /// <para>Where Greenwood has nothing to say the limits come from the binomial distribution, so that no certainty
    /// appears from nothing: before the first end the lower limit is (a/2)^(1/n) with n still followed, and after the
    /// last one of all ended the upper limit is that of the step before times 1 - (a/2)^(1/n) with n at risk, a =
    /// 1 - level (the exact limits of Clopper and Pearson 1934 for no and for all; applied here, common practice, no
    /// source).</para>
    /// <para>With late entries (<see cref="Lifetime.FromHours"/>) the first ages can be followed by very few; a curve
    /// that falls to nothing there says so by its <see cref="SurvivalStep.AtRisk"/>.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A lifetime or the level is out of range.</exception>
    public static SurvivalCurve? Of(
        IReadOnlyCollection<Lifetime> lives, double level, SurvivalLimits limits = SurvivalLimits.LogMinusLog)
    {
        ArgumentNullException.ThrowIfNull(lives);
        if (!Enum.IsDefined(limits))
            throw new ArgumentOutOfRangeException(nameof(limits), limits, "Must be one of the kinds named.");
        var z = Level.NormalQuantile(level);
        foreach (var life in lives)
            Lifetime.Check(life, nameof(lives));
        if (lives.Count == 0)
            return null;

        var steps = new List<SurvivalStep>();
        var S = 1.0; // [1]
        var V = 0.0; // Greenwood's sum, the variance of log S
        foreach (var (t, n, d) in RiskTable.Of(lives))
        {
            S *= (double)(n - d) / n;
            V += (double)d / ((double)n * (n - d)); // infinite when all ended; S is 0 from there on
            var before = steps.Count == 0 ? 1 : steps[^1].Alive.High;
            var alive = S > 0 ? Limited(S, Math.Sqrt(V), z, level, limits) : NoneLeft(n, before, level);
            steps.Add(new SurvivalStep(t, n, d, alive));
            if (S == 0)
                break; // none can be alive later, whoever entered late
        }

        return new SurvivalCurve([.. lives], steps, level, z);
    }

    private static Estimate Limited(double S, double sdOfLogS, double z, double level, SurvivalLimits limits)
    {
        var se = S * sdOfLogS;
        var (low, high) = limits switch
        {
            SurvivalLimits.Plain => (S - (z * se), S + (z * se)),
            SurvivalLimits.Log => (S * Math.Exp(-z * sdOfLogS), S * Math.Exp(z * sdOfLogS)),
            _ => LogMinusLog(S, sdOfLogS, z),
        };
        return new Estimate(S, se, Math.Max(0, low), Math.Min(1, high), level);
    }

    private static (double Low, double High) LogMinusLog(double S, double sdOfLogS, double z)
    {
        var reach = z * sdOfLogS / -Math.Log(S);
        return (Math.Pow(S, Math.Exp(reach)), Math.Pow(S, Math.Exp(-reach)));
    }

    // The standard error is that of the binomial at its upper limit: Greenwood's would be none.
    private static Estimate NoneLeft(int n, double before, double level)
    {
        var high = before * (1 - Math.Pow((1 - level) / 2, 1.0 / n));
        return new Estimate(0, Math.Sqrt(high * (1 - high) / n), 0, high, level);
    }
}
