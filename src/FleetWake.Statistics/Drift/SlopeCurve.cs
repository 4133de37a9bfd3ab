using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// A component's likelihood over the grid of drifts, exp(logWeight + s Xu - s^2 Xx / 2), told four places at a time outward from
/// its peak. Whoever adds curves up walks them, f *= up and up *= shrink, and keeps none.
/// </summary>
/// <remarks>
/// Places four apart differ by a factor that itself shrinks by exp(-16 Xx): two multiplications for four places where
/// exponentials would cost forty.
/// </remarks>
/// <param name="Start">The vector of four places that has the peak in it.</param>
/// <param name="Value">The curve there.</param>
/// <param name="Up">What it is multiplied by for the vector above.</param>
/// <param name="Down">And for the one below.</param>
/// <param name="Shrink">What either factor is multiplied by at each step.</param>
internal readonly record struct SlopeCurve(int Start, Vector256<double> Value, Vector256<double> Up, Vector256<double> Down, Vector256<double> Shrink)
{
    /// <summary>The steepest curve, in precision, that is walked: the factors of a steeper one would overflow.</summary>
    private const double Steepest = 2;

    private const double Highest = 600;

    /// <summary>A curve so steep that it is told vector by vector.</summary>
    public static bool IsSteep(in Component c) => c.Xx > Steepest;

    /// <param name="c">The component, not a steep one.</param>
    /// <param name="logWeight">Its weight, as a logarithm.</param>
    public static SlopeCurve Of(in Component c, double logWeight)
    {
        var start = PeakVector(c);
        var up = Vector256.Exp(Vector256.Create((4 * c.Xu) - (8 * c.Xx)) - (Vector256.Create(4 * c.Xx) * SlopeLikelihood.Place(start)));
        var shrink = Vector256.Create(Math.Exp(-16 * c.Xx));
        // With a = 4 (u - x s) the factors are exp(a - 8 x) upward and exp(-a - 8 x) downward.
        return new(start, Direct(c, logWeight, start), up, shrink / up, shrink);
    }

    /// <summary>One vector of a curve, steep or not, and nothing beside it.</summary>
    public static SlopeCurve At(in Component c, double logWeight, int vector) => new(vector, Direct(c, logWeight, vector), default, default, default);

    private static int PeakVector(in Component c) => (SlopeLikelihood.Nearest(c) - SlopeGrid.Lowest) / 4;

    private static Vector256<double> Direct(in Component c, double logWeight, int vector)
    {
        var s = SlopeLikelihood.Place(vector);
        var log = Vector256.Create(logWeight) + (s * (Vector256.Create(c.Xu) - (Vector256.Create(0.5 * c.Xx) * s)));
        // A curve with its peak far above the grid goes on rising in the places that nobody reads: infinity times no weight is no number.
        return Vector256.Exp(Vector256.Min(log, Vector256.Create(Highest)));
    }
}
