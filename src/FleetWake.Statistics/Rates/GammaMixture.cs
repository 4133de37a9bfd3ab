using MathNet.Numerics;

namespace FleetWake.Statistics.Rates;

/// <summary>One gamma distribution among several.</summary>
/// <param name="Weight">How much it counts.</param>
/// <param name="Shape">Its shape.</param>
/// <param name="Rate">Its rate, one over the scale.</param>
internal readonly record struct GammaPart(double Weight, double Shape, double Rate);

/// <summary>Several gamma distributions, each with its weight.</summary>
internal sealed class GammaMixture
{
    private const double Negligible = 1e-5; // weight, where a share is asked; a mean square feels less than that

    private readonly GammaPart[] _parts;
    private readonly double _sum; // of their weights

    private GammaMixture(GammaPart[] parts)
    {
        var square = 0.0;
        foreach (var (weight, shape, rate) in parts)
        {
            Mean += weight * shape / rate;
            square += weight * shape * (shape + 1) / (rate * rate);
        }

        Sd = Math.Sqrt(Math.Max(0, square - (Mean * Mean)));
        _parts = [.. parts.Where(part => part.Weight > Negligible)];
        _sum = _parts.Sum(part => part.Weight);
    }

    internal double Mean { get; }

    internal double Sd { get; }

    /// <summary>Parts whose weights add up to 1.</summary>
    internal static GammaMixture Of(IEnumerable<GammaPart> parts) => new([.. parts]);

    /// <summary>The place that a share p lies below, to about seven digits.</summary>
    internal double Quantile(double p)
    {
        double low = Mean, high = Mean;
        double below = Below(low) - p, above = below;
        while (below > 0 && low > 1e-200 * Mean)
            (high, above, low, below) = (low, below, low / 2, Below(low / 2) - p);
        while (above < 0)
            (low, below, high, above) = (high, above, high * 1.5, Below(high * 1.5) - p);

        // False position, the end that stays put halved each time (Illinois; Dowell and Jarratt 1971, from memory).
        for (var i = 0; i < 60 && high - low > 1e-7 * high; i++)
        {
            var middle = low + ((high - low) * below / (below - above));
            var excess = Below(middle) - p;
            if (excess > 0)
                (high, above, below) = (middle, excess, below / 2);
            else
                (low, below, above) = (middle, excess, above / 2);
            if (Math.Abs(excess) < 1e-10)
                return middle;
        }

        return (low + high) / 2;
    }

    private double Below(double x)
    {
        var sum = 0.0;
        foreach (var (weight, shape, rate) in _parts)
            sum += weight * SpecialFunctions.GammaLowerRegularized(shape, rate * x);
        return sum / _sum;
    }
}
