namespace FleetWake.Statistics.Charts;

/// <summary>
/// How many readings a chart takes on average to its first signal, from the integral equation of Page (1954) and Crowder
/// (Technometrics 29 (1987) 401-407), solved at Gauss's points (Goel and Wu, Technometrics 13 (1971) 221-230); cited from
/// memory.
/// </summary>
/// <remarks>
/// For independent normal readings with a level and a noise that are known, one reading like another. A fleet's trials
/// are not so: do not quote these as the program's rate of false alarms, which is simulated on the fleet's own schedule.
/// All settings are in standard deviations of one reading [1].
/// </remarks>
public static class RunLength
{
    /// <summary>The widest CUSUM served.</summary>
    public const double GreatestDecision = 20;

    /// <summary>A CUSUM that looks one way, for a rise.</summary>
    /// <param name="k">The allowance, zero or more, at most 3.</param>
    /// <param name="h">The decision, above zero, at most <see cref="GreatestDecision"/>.</param>
    /// <param name="shift">How far the level is off its target from the first reading on; finite; a fall is negative.</param>
    /// <param name="drift">By how much it goes off further with each reading: reading i is off by shift + i drift, i from
    /// 1; 0, or 0.005 up to 10.</param>
    /// <param name="headStart">Where the sum begins, 0 up to h.</param>
    /// <returns>Mean number of readings up to and with the first that signals; infinite beyond 1e12.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double OfOneSidedCusum(double k, double h, double shift = 0, double drift = 0, double headStart = 0)
    {
        CheckCusum(k, h, shift, drift, headStart);
        var chain = RunChain.Cusum(k, h);
        return drift == 0 ? chain.Stationary(shift, headStart) : chain.Drifting(shift, drift, headStart);
    }

    /// <summary>
    /// A CUSUM that looks both ways, from its two halves: exact without a head start, since one sum is at zero whenever
    /// the other signals, and with one as Lucas and Crosier (Technometrics 24 (1982) 199-205, cited from memory) give it.
    /// </summary>
    /// <param name="k">As for one side.</param>
    /// <param name="h">As for one side.</param>
    /// <param name="shift">As for one side.</param>
    /// <param name="headStart">Where both sums begin, 0 up to h.</param>
    /// <returns>As for one side.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double OfCusum(double k, double h, double shift = 0, double headStart = 0)
    {
        CheckCusum(k, h, shift, 0, headStart);
        var chain = RunChain.Cusum(k, h);
        double Up(double start) => chain.Stationary(shift, start);
        double Down(double start) => chain.Stationary(-shift, start);
        var (up, down) = (Up(0), Down(0));
        if (double.IsInfinity(up) || double.IsInfinity(down))
            return double.IsInfinity(up) ? Down(headStart) : Up(headStart);
        return ((Up(headStart) * down) + (Down(headStart) * up) - (up * down)) / (up + down);
    }

    /// <summary>An EWMA with settled limits, looking both ways, that begins at its target.</summary>
    /// <param name="lambda">Weight of the newest reading, 0.02 to 1.</param>
    /// <param name="width">L, the limits in standard deviations of the average; above zero, at most 6.</param>
    /// <param name="shift">As for the CUSUM.</param>
    /// <param name="drift">As for the CUSUM.</param>
    /// <returns>As for the CUSUM.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Out of range.</exception>
    public static double OfEwma(double lambda, double width, double shift = 0, double drift = 0)
    {
        if (!(lambda >= 0.02 && lambda <= 1))
            throw new ArgumentOutOfRangeException(nameof(lambda), lambda, "Must lie within 0.02 and 1.");
        if (!(width > 0 && width <= 6))
            throw new ArgumentOutOfRangeException(nameof(width), width, "Must lie above 0 and up to 6.");
        Range.Finite(shift, nameof(shift));
        CheckDrift(drift);

        var chain = RunChain.Ewma(lambda, width);
        return drift == 0 ? chain.Stationary(shift, 0) : chain.Drifting(shift, drift, 0);
    }

    private static void CheckCusum(double k, double h, double shift, double drift, double headStart)
    {
        if (!(k >= 0 && k <= 3))
            throw new ArgumentOutOfRangeException(nameof(k), k, "Must lie within 0 and 3.");
        if (!(h > 0 && h <= GreatestDecision))
            throw new ArgumentOutOfRangeException(nameof(h), h, $"Must lie above 0 and up to {GreatestDecision}.");
        Range.Finite(shift, nameof(shift));
        CheckDrift(drift);
        if (!(headStart >= 0 && headStart <= h))
            throw new ArgumentOutOfRangeException(nameof(headStart), headStart, $"Must lie within 0 and h = {h}.");
    }

    // A slower drift, or one that a chart looks away from, would be followed reading by reading for ever.
    private static void CheckDrift(double drift)
    {
        if (drift != 0 && !(drift >= 0.005 && drift <= 10))
            throw new ArgumentOutOfRangeException(nameof(drift), drift, "Must be 0, or lie within 0.005 and 10.");
    }
}
