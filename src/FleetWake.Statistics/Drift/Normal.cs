using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>The standard normal distribution.</summary>
internal static class Normal
{
    /// <summary>Phi(z) of four numbers, within 7.5e-8 absolutely.</summary>
    /// <remarks>Abramowitz and Stegun 1964, 26.2.17: nobody sees the eighth digit of a chance.</remarks>
    public static Vector256<double> Cdf(Vector256<double> z)
    {
        var abs = Vector256.Min(Vector256.Abs(z), Vector256.Create(30.0));
        var t = Vector256<double>.One / (Vector256<double>.One + (Vector256.Create(0.2316419) * abs));
        var poly = Vector256.Create(1.330274429);
        poly = (poly * t) + Vector256.Create(-1.821255978);
        poly = (poly * t) + Vector256.Create(1.781477937);
        poly = (poly * t) + Vector256.Create(-0.356563782);
        poly = (poly * t) + Vector256.Create(0.319381530);
        var tail = Vector256.Exp(Vector256.Create(-0.5) * abs * abs) * Vector256.Create(0.3989422804014327) * t * poly;
        return Vector256.ConditionalSelect(Vector256.GreaterThan(z, Vector256<double>.Zero), Vector256<double>.One - tail, tail);
    }
}
