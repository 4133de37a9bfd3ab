using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>Four drifts: weight, reading's mean and sd, and the chance of being out now and after a reading.</summary>
internal readonly record struct FourDrifts(
    Vector256<double> Drift, Vector256<double> Weight, Vector256<double> Mean, Vector256<double> Sd, Vector256<double> Now,
    Vector256<double> Over, Vector256<double> Under, Vector256<double> PerReading)
{
    public static FourDrifts Of(
        ReadOnlySpan<int> places, ReadOnlySpan<double> weights, ReadOnlySpan<double> means, ReadOnlySpan<double> variances, SoundSeries sound, double hours, double noise)
    {
        Span<double> v = stackalloc double[7 * 4];
        v.Clear();
        v.Slice(12, 4).Fill(1); // an empty place has no weight, and a sd to divide by
        v.Slice(16, 4).Fill(1);
        for (var k = 0; k < places.Length; k++)
        {
            var g = places[k];
            var (drift, level, gain) = (SlopeGrid.At(g), variances[g], SlopeGrid.At(g) * hours / 100);
            (v[k], v[4 + k], v[8 + k], v[12 + k]) = (drift, weights[g], means[g], Math.Sqrt(level + noise));
            v[16 + k] = Math.Sqrt(level);
            // A level that falls leaves the upper end now or never, one that rises the lower end.
            v[20 + k] = means[g] + Math.Max(gain, 0) - sound.MaxRpm;
            v[24 + k] = sound.MinRpm - means[g] - Math.Min(gain, 0);
        }

        Vector256<double> sd = At(v, 3), own = At(v, 4), over = At(v, 5), under = At(v, 6);
        // A reading z standard deviations off moves the level by own^2 / sd z, and leaves it own noise / sd of doubt.
        var left = own * Vector256.Create(Math.Sqrt(noise)) / sd;
        return new(
            At(v, 0), At(v, 1), At(v, 2), sd, Normal.Cdf(over / own) + Normal.Cdf(under / own), over / left, under / left, own * own / sd / left);

        static Vector256<double> At(ReadOnlySpan<double> v, int i) => Vector256.Create(v.Slice(4 * i, 4));
    }

    /// <summary>Weight times density of a reading, and the chance of being out after it.</summary>
    public (Vector256<double> Weight, Vector256<double> Out) After(Vector256<double> y)
    {
        var z = (y - Mean) / Sd;
        var density = Vector256.Exp(Vector256.Create(-0.5) * z * z) / Sd;
        return (Weight * density, Normal.Cdf(Over + (PerReading * z)) + Normal.Cdf(Under - (PerReading * z)));
    }
}
