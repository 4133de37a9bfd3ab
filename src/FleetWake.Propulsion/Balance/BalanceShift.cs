namespace FleetWake.Propulsion.Balance;

/// <summary>How far a boat settles from its baseline. Logarithms of ratios [1]: 0.01 is 1 % up, very nearly.</summary>
/// <param name="LnRate">ln(N/N_0) of the engine.</param>
/// <param name="LnSpeed">ln(V/V_0).</param>
/// <param name="Contrast">c = LnSpeed - kappa LnRate, which neither engine nor air can move.</param>
public readonly record struct BalanceShift(double LnRate, double LnSpeed, double Contrast)
{
    /// <summary>The shift between a baseline and a point that was solved for or measured.</summary>
    /// <param name="baseline">The baseline, rate and speed above zero.</param>
    /// <param name="point">The other point, rate and speed above zero.</param>
    /// <param name="kappa">kappa [1] at the baseline; see <see cref="BalanceSlopes.Kappa"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">A rate or speed of zero or less.</exception>
    public static BalanceShift Between(WotBaseline baseline, WotPoint point, double kappa)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        var lnRate = LnRatio(point.Rate.RevolutionsPerMinute, baseline.Rate.RevolutionsPerMinute, nameof(point));
        var lnSpeed = LnRatio(point.Speed.MetresPerSecond, baseline.Speed.MetresPerSecond, nameof(point));
        return new BalanceShift(lnRate, lnSpeed, lnSpeed - (kappa * lnRate));
    }

    private static double LnRatio(double value, double reference, string name) => value > 0 && reference > 0
        ? Math.Log(value / reference)
        : throw new ArgumentOutOfRangeException(name, value, "Rates and speeds must be above zero.");
}
