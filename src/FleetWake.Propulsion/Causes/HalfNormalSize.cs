namespace FleetWake.Propulsion.Causes;

/// <summary>
/// What readings of unit noise, z = s u + noise, say of a size s that is half-normal of scale w beforehand, s of zero or more.
/// In closed form, because the product of two normal curves is one and its share above zero is known: with p = u'u, q = u'z and
/// v = 1/(p + 1/w2), the size is normal of mean v q and variance v cut off below zero, and the readings are
/// 2 sqrt(v)/w P(q sqrt(v)) exp(v q2/2) times as likely as with no size at all. Derived here from the definition.
/// </summary>
internal readonly struct HalfNormalSize
{
    private HalfNormalSize(double logOdds, double mean, double meanSquare) => (LogOdds, Mean, MeanSquare) = (logOdds, mean, meanSquare);

    /// <summary>ln of how many times as likely the readings are as with no size.</summary>
    internal double LogOdds { get; }

    /// <summary>Mean of the size.</summary>
    internal double Mean { get; }

    /// <summary>Mean of its square.</summary>
    internal double MeanSquare { get; }

    internal static HalfNormalSize Of(double p, double q, double width)
    {
        var v = 1 / (p + (1 / (width * width)));
        var root = Math.Sqrt(v);
        var t = q * root; // the mean in standard deviations, before the cut
        var logShare = NormalCurve.LogBelow(t);
        var hazard = Math.Exp((-t * t / 2) - (0.5 * Math.Log(2 * Math.PI)) - logShare); // Z(t)/P(t)
        return new HalfNormalSize(
            (t * t / 2) + Math.Log(2 * root / width) + logShare,
            root * (t + hazard),
            v * (1 + (t * (t + hazard))));
    }
}
