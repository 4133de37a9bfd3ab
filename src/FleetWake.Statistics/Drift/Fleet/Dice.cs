namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// Numbers that look random and are the same on every machine and in every version: SplitMix64 (Steele, Lea and Flood 2014,
/// OOPSLA, figure 17).
/// </summary>
internal struct Dice(ulong start)
{
    private ulong _state = start;

    public double Uniform()
    {
        var z = _state += 0x9E3779B97F4A7C15UL;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    /// <summary>A standard normal number (Box and Muller 1958).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Uniform())) * Math.Cos(2 * Math.PI * Uniform());

    /// <summary>A place, drawn by log weights that are changed on the way.</summary>
    public int Place(Span<double> logWeights)
    {
        var top = double.NegativeInfinity;
        foreach (var w in logWeights) top = Math.Max(top, w);
        var sum = 0.0;
        for (var i = 0; i < logWeights.Length; i++) sum += logWeights[i] = Math.Exp(logWeights[i] - top);
        var u = Uniform() * sum;
        for (var i = 0; i < logWeights.Length - 1; i++)
        {
            u -= logWeights[i];
            if (u < 0) return i;
        }

        return logWeights.Length - 1;
    }
}
