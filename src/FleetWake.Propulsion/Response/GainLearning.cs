namespace FleetWake.Propulsion.Response;

/// <summary>
/// Learns how an engine family answers, from changes that are known: weather moves power, a repitch or another prop moves pitch.
/// One family at a time; the torque slope of another engine may differ by a factor of two.
/// </summary>
/// <remarks>
/// Posterior of g and of eta = dlnN/dlnP on a grid, exactly and without iteration: the prior is normal in both, correlated because
/// the engine's slope stands in both; each step is lnN = g dlnP_ower or lnN = eta dlnP with Student noise of four degrees of freedom
/// (Lange, Little and Taylor 1989, J. Am. Stat. Assoc. 84:881, from memory), so that a wrong reading loses its say the further it lies off. A boat
/// differs from its family by a share of its own, which all its steps have in common and which is integrated over: many steps of one boat
/// tell that boat's answer and not the family's. Its share of g and that of eta are taken as independent.
/// </remarks>
public static class GainLearning
{
    /// <summary>Correlation of g and dlnN/dlnP beforehand [1], over series, exponents and torque slopes (computed; the tests compute it again).</summary>
    internal const double PriorCorrelation = -0.9;

    private const double BetweenBoats = 0.08;  // [1] by which boats of one family differ in either, over series and exponents (computed)
    private const double Degrees = 4;          // of freedom of the Student noise
    private const double Reach = 4.5;          // grid [prior standard deviations]
    private const int Points = 181;            // a side
    private const int BoatPoints = 21;         // of a boat's own share, -3 to 3 standard deviations

    /// <summary>What is known after some steps.</summary>
    /// <param name="power">Known changes of power, none or more.</param>
    /// <param name="pitch">Known changes of pitch, none or more.</param>
    /// <returns>
    /// Mean and standard deviation of both, within the prior's 4.5 standard deviations, g from 0.02 up and eta below zero; exactly the
    /// prior when there are no steps.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A change that is not within -1 to 1, a doubt of one that is negative or not below 1, or
    /// a doubt of RPM that is not above 0 and below 1.</exception>
    public static LearnedResponse Learn(IReadOnlyList<PowerStep> power, IReadOnlyList<PitchStep> pitch)
    {
        ArgumentNullException.ThrowIfNull(power);
        ArgumentNullException.ThrowIfNull(pitch);
        foreach (var step in power) Check(step.LnPower, step.LnRpm, nameof(power));
        foreach (var step in pitch) Check(step.LnPitch, step.LnRpm, nameof(pitch));
        if (power.Count + pitch.Count == 0)
            return LearnedResponse.Prior;

        var prior = LearnedResponse.Prior;
        var g = Grid(prior.Gain, least: 0.02);
        var eta = Grid(prior.PitchElasticity, least: double.NegativeInfinity);
        var ofPower = ByBoat(power.Select(step => (step.Boat, step.LnPower, step.LnRpm)));
        var ofPitch = ByBoat(pitch.Select(step => (step.Boat, step.LnPitch, step.LnRpm)));
        var byGain = Array.ConvertAll(g, value => ofPower.Sum(boat => LogLikelihood(boat, value)));
        var byPitch = Array.ConvertAll(eta, value => value < 0 ? ofPitch.Sum(boat => LogLikelihood(boat, value)) : double.NegativeInfinity);
        return Moments(g, eta, (i, j) => byGain[i] + byPitch[j] + LogPrior(g[i], eta[j]), power.Count + pitch.Count);
    }

    private static LearnedResponse Moments(double[] g, double[] eta, Func<int, int, double> log, int steps)
    {
        var most = double.NegativeInfinity;
        for (var i = 0; i < g.Length; i++)
            for (var j = 0; j < eta.Length; j++)
                most = Math.Max(most, log(i, j));
        var (n, sg, se, sgg, see, sge) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        var (g0, e0) = (g[g.Length / 2], eta[eta.Length / 2]); // moments about the middle lose no digits
        for (var i = 0; i < g.Length; i++)
            for (var j = 0; j < eta.Length; j++)
            {
                var w = Math.Exp(log(i, j) - most);
                var (x, y) = (g[i] - g0, eta[j] - e0);
                (n, sg, se) = (n + w, sg + (w * x), se + (w * y));
                (sgg, see, sge) = (sgg + (w * x * x), see + (w * y * y), sge + (w * x * y));
            }

        var (mg, me) = (sg / n, se / n);
        var (vg, ve) = ((sgg / n) - (mg * mg), (see / n) - (me * me));
        var correlation = ((sge / n) - (mg * me)) / Math.Sqrt(vg * ve);
        return new LearnedResponse(new Uncertain(g0 + mg, Math.Sqrt(vg)), new Uncertain(e0 + me, Math.Sqrt(ve)), correlation, steps);
    }

    private static double[] Grid(Uncertain prior, double least)
    {
        var (low, high) = (Math.Max(least, prior.Low(Reach)), prior.High(Reach));
        return [.. Enumerable.Range(0, Points).Select(i => low + ((high - low) * i / (Points - 1)))];
    }

    private static double LogPrior(double g, double eta)
    {
        var prior = LearnedResponse.Prior;
        var x = (g - prior.Gain.Value) / prior.Gain.StandardDeviation;
        var y = (eta - prior.PitchElasticity.Value) / prior.PitchElasticity.StandardDeviation;
        var rho = PriorCorrelation;
        return -((x * x) - (2 * rho * x * y) + (y * y)) / (2 * (1 - (rho * rho)));
    }

    /// <summary>Steps by boat; one of which the boat is not known stands alone.</summary>
    private static List<(Uncertain Change, Uncertain LnRpm)[]> ByBoat(IEnumerable<(string? Boat, Uncertain Change, Uncertain LnRpm)> steps) =>
        [.. steps.Select((step, i) => (Key: step.Boat is null ? (null, i) : (step.Boat, -1), step.Change, step.LnRpm))
            .GroupBy(step => step.Key, step => (step.Change, step.LnRpm)).Select(boat => boat.ToArray())];

    /// <summary>Of one boat's steps, over its own share u of the family's slope: normal, BetweenBoats wide.</summary>
    private static double LogLikelihood((Uncertain Change, Uncertain LnRpm)[] boat, double slope)
    {
        if (boat.Length == 1)
            return LogLikelihood(boat[0].Change, boat[0].LnRpm, slope, BetweenBoats);
        Span<double> logs = stackalloc double[BoatPoints];
        var (most, weights) = (double.NegativeInfinity, 0.0);
        for (var k = 0; k < BoatPoints; k++)
        {
            var u = -3 + (6.0 * k / (BoatPoints - 1)); // [standard deviations]
            weights += Math.Exp(-u * u / 2);
            logs[k] = -u * u / 2;
            foreach (var (change, lnRpm) in boat)
                logs[k] += LogLikelihood(change, lnRpm, slope * (1 + (BetweenBoats * u)), 0);
            most = Math.Max(most, logs[k]);
        }

        var sum = 0.0;
        foreach (var log in logs) sum += Math.Exp(log - most);
        return most + Math.Log(sum / weights);
    }

    private static double LogLikelihood(Uncertain change, Uncertain lnRpm, double slope, double betweenBoats)
    {
        var s2 = (lnRpm.StandardDeviation * lnRpm.StandardDeviation)
            + Square(slope * change.StandardDeviation) + Square(betweenBoats * slope * change.Value);
        var r = lnRpm.Value - (slope * change.Value);
        return -(Math.Log(s2) / 2) - ((Degrees + 1) / 2 * Math.Log(1 + (r * r / (Degrees * s2))));
    }

    private static void Check(Uncertain change, Uncertain lnRpm, string name)
    {
        if (!(Math.Abs(change.Value) <= 1) || !(Math.Abs(lnRpm.Value) <= 1))
            throw new ArgumentOutOfRangeException(name, $"{change.Value}, {lnRpm.Value}", "Changes must be logarithms of ratios within -1 to 1.");
        if (!(change.StandardDeviation is >= 0 and < 1) || !(lnRpm.StandardDeviation is > 0 and < 1))
            throw new ArgumentOutOfRangeException(name, $"{change.StandardDeviation}, {lnRpm.StandardDeviation}", "Doubts must be below 1, that of the change not negative and that of RPM above 0.");
    }

    private static double Square(double x) => x * x;
}
