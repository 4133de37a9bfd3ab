namespace FleetWake.Statistics.Charts;

/// <summary>The two sums of a CUSUM after one reading.</summary>
/// <param name="Upper">Evidence of a rise, max(0, before + x - target - k), zero or more.</param>
/// <param name="UpperRun">For how many readings it has been above zero: the rise began that long ago.</param>
/// <param name="Lower">Evidence of a fall, max(0, before + target - k - x), zero or more.</param>
/// <param name="LowerRun">For how many readings it has been above zero.</param>
/// <param name="Decision">The h that either sum must exceed, in the unit of the sums.</param>
public readonly record struct CusumSides(double Upper, int UpperRun, double Lower, int LowerRun, double Decision)
{
    /// <summary>Whether the upper sum is above the decision.</summary>
    public bool SignalsRise => Upper > Decision;

    /// <summary>Whether the lower sum is above the decision.</summary>
    public bool SignalsFall => Lower > Decision;

    internal CusumSides After(double deviation, double k)
    {
        var upper = Math.Max(0, Upper + deviation - k);
        var lower = Math.Max(0, Lower - deviation - k);
        return new CusumSides(
            upper, upper > 0 ? UpperRun + 1 : 0, lower, lower > 0 ? LowerRun + 1 : 0, Decision);
    }
}
