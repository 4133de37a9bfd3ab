namespace FleetWake.Statistics.Rates;

/// <summary>
/// Effects from several places pooled into their mean, their spread, and a better guess of each: the normal random
/// effects model y_i = mu + u_i + e_i, u ~ N(0, tau^2), e ~ N(0, v_i), tau^2 by restricted maximum likelihood
/// (Viechtbauer, J. Educ. Behav. Statist. 30 (2005) 261-293; cited from memory).
/// </summary>
public static class EffectPool
{
    /// <summary>Pools. What one strike costs, or what one repitch gives back, over a fleet.</summary>
    /// <param name="effects">Two effects or more.</param>
    /// <param name="level">Level of all intervals, above 0 and up to 0.9999, such as 0.8.</param>
    /// <returns>The pool; null with fewer than two effects.</returns>
    /// <remarks>
    /// The limits of the mean are those of Hartung and Knapp (Statist. Med. 20 (2001) 3875-3889, cited from memory),
    /// which know that tau is a guess; their standard error is never let below the plain one, which would be luck
    /// (common practice).
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An effect or the level is out of range.</exception>
    public static PooledEffects? Of(IReadOnlyList<Effect> effects, double level)
    {
        ArgumentNullException.ThrowIfNull(effects);
        var z = Level.NormalQuantile(level);
        foreach (var effect in effects)
        {
            if (!(Math.Abs(effect.Value) <= 1e12))
                throw new ArgumentOutOfRangeException(nameof(effects), effect.Value, "Value must lie within -1e12 and 1e12.");
            if (!(effect.StandardError >= 1e-9 && effect.StandardError <= 1e9))
                throw new ArgumentOutOfRangeException(
                    nameof(effects), effect.StandardError, "StandardError must lie within 1e-9 and 1e9.");
        }

        var k = effects.Count;
        if (k < 2)
            return null;

        var y = effects.Select(effect => effect.Value).ToArray();
        var v = effects.Select(effect => effect.StandardError * effect.StandardError).ToArray();
        var alike = Moments(y, v, 0);
        var tau2 = Restricted(y, v);
        var (mu, sumW, trP, trPP, _, Q) = Moments(y, v, tau2);
        var se = 1 / Math.Sqrt(sumW);
        var careful = se * Math.Sqrt(Math.Max(1, Q / (k - 1)));
        var typical = (k - 1) / alike.TrP; // the "typical" variance of Higgins and Thompson 2002

        return new PooledEffects(
            About(mu, careful, StudentQuantile.TwoSided(level, k - 1), level),
            se,
            Math.Sqrt(tau2),
            Math.Sqrt(2 / trPP),
            alike.Q,
            tau2 / (tau2 + typical),
            About(mu, Math.Sqrt(tau2 + (se * se)), StudentQuantile.TwoSided(level, Math.Max(1, k - 2)), level),
            [.. effects.Select(effect => Drawn(effect, mu, se, tau2, 1, z, level))],
            [.. effects.Select(effect => Drawn(effect, mu, se, tau2, Math.Max(0, k - 3) / (k - 1.0), z, level))]);
    }

    // B is the weight of the mean. Variance (1 - B) v + B^2 se^2: Morris adds a term for tau, which the factor stands for.
    private static Estimate Drawn(
        Effect effect, double mu, double se, double tau2, double factor, double z, double level)
    {
        var v = effect.StandardError * effect.StandardError;
        var B = factor * v / (v + tau2);
        var value = ((1 - B) * effect.Value) + (B * mu);
        return About(value, Math.Sqrt(((1 - B) * v) + (B * B * se * se)), z, level);
    }

    private static Estimate About(double value, double se, double reach, double level) =>
        new(value, se, value - (reach * se), value + (reach * se), level);

    // Fisher scoring: tau^2 += (y'PPy - tr P) / tr PP, kept at zero or above.
    private static double Restricted(double[] y, double[] v)
    {
        var mean = y.Average();
        var tau2 = Math.Max(0, (y.Sum(value => Math.Pow(value - mean, 2)) / (y.Length - 1)) - v.Average()); // Hedges
        for (var i = 0; i < 500; i++)
        {
            var (_, _, trP, trPP, yPPy, _) = Moments(y, v, tau2);
            var step = Math.Max(-tau2, (yPPy - trP) / trPP);
            tau2 += step;
            if (Math.Abs(step) <= 1e-13 * (tau2 + v.Min()))
                break;
        }

        return tau2;
    }

    // P = W - W 1 1' W / sum w, the residual maker of the weighted mean; Py is w (y - mu).
    private static (double Mu, double SumW, double TrP, double TrPP, double YPPY, double Q) Moments(
        double[] y, double[] v, double tau2)
    {
        double s1 = 0, s2 = 0, s3 = 0, sy = 0;
        for (var i = 0; i < y.Length; i++)
        {
            var w = 1 / (v[i] + tau2);
            s1 += w;
            s2 += w * w;
            s3 += w * w * w;
            sy += w * y[i];
        }

        double mu = sy / s1, yPPy = 0, Q = 0;
        for (var i = 0; i < y.Length; i++)
        {
            var r = (y[i] - mu) / (v[i] + tau2);
            yPPy += r * r;
            Q += r * (y[i] - mu);
        }

        return (mu, s1, s1 - (s2 / s1), s2 - (2 * s3 / s1) + (s2 * s2 / (s1 * s1)), yPPy, Q);
    }
}
