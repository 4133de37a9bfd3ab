namespace FleetWake.Statistics.Charts;

/// <summary>
/// The two-sided CUSUM for a known level: Page, Biometrika 41 (1954) 100-115, in the tabular form of Montgomery,
/// Introduction to Statistical Quality Control, equations 9.2 and 9.3 (cited from memory). It goes on after a signal.
/// </summary>
public static class TabularCusum
{
    /// <summary>Runs the chart.</summary>
    /// <param name="values">The readings in their order [the caller's unit], within 1e100 of zero.</param>
    /// <param name="target">The level when all is well [the same unit], within 1e100 of zero.</param>
    /// <param name="allowance">K, half the shift to be found soon [the same unit]; zero or more, finite. 0.5 standard
    /// deviations find a shift of one.</param>
    /// <param name="decision">H [the same unit], above zero, finite; <see cref="RunLength"/> says what it costs.</param>
    /// <param name="headStart">Where both sums begin [the same unit], 0 up to H; H/2 is the fast initial response of Lucas
    /// and Crosier (1982), for a level that may be off at the start.</param>
    /// <returns>The sums after each reading.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static IReadOnlyList<CusumSides> Run(
        IReadOnlyList<double> values, double target, double allowance, double decision, double headStart = 0)
    {
        ArgumentNullException.ThrowIfNull(values);
        Range.Reading(target, nameof(target));
        Range.ZeroOrMore(allowance, nameof(allowance));
        Range.AboveZero(decision, nameof(decision));
        if (!(headStart >= 0 && headStart <= decision))
            throw new ArgumentOutOfRangeException(nameof(headStart), headStart, $"Must lie within 0 and H = {decision}.");

        var sides = new CusumSides(headStart, 0, headStart, 0, decision);
        var run = new List<CusumSides>(values.Count);
        foreach (var x in values)
        {
            Range.Reading(x, nameof(values));
            sides = sides.After(x - target, allowance);
            run.Add(sides);
        }

        return run;
    }
}
