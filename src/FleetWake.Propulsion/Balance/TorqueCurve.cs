using System.Runtime.CompilerServices;

namespace FleetWake.Propulsion.Balance;

/// <summary>
/// How an engine's torque at wide-open throttle changes with its rate: f(x) = Q_e/Q_rated over x = N/N_rated. Two shapes are known,
/// both of the second degree in x, so that the rate at which engine and prop agree has a closed form.
/// </summary>
/// <remarks>
/// The slope decides: e = 0 or e = -2 change every response to pitch or load by a factor of two, and no manual states it. The
/// shapes are for a stretch about the rated rate; what they say far from it is a shape, not a measurement.
/// </remarks>
public readonly record struct TorqueCurve
{
    /// <summary>The steepest fall of torque that is taken [1].</summary>
    public const double SteepestSlope = -6;

    private readonly double _f0, _f1, _f2;
    private readonly EngineRate _rated;

    private TorqueCurve(EngineRate rated, double f0, double f1, double f2)
    {
        if (!(rated.RevolutionsPerMinute > 0))
            throw new ArgumentOutOfRangeException(nameof(rated), rated, "The rated rate must be above zero.");

        (_rated, _f0, _f1, _f2) = (rated, f0, f1, f2);
    }

    /// <summary>The rate of rated power.</summary>
    public EngineRate Rated => _rated;

    /// <summary>
    /// The cubic of spark-ignition engines: P/P_rated = x + x^2 - x^3, so f = 1 + x - x^2, with slope e = -1 at the rated rate, where
    /// power is at its highest (Artamonov; Wong, Theory of Ground Vehicles; both from memory).
    /// </summary>
    /// <param name="rated">Rate of rated power, above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rated"/> is zero.</exception>
    public static TorqueCurve Cubic(EngineRate rated) => new(rated, 1, 1, -1);

    /// <summary>A straight line through rated torque: f = 1 + e (x - 1). No source; it holds one slope apart from all else.</summary>
    /// <param name="rated">Rate of rated power, above zero.</param>
    /// <param name="slope">e = dlnQ/dlnN at the rated rate [1], -6 to less than 1; at 1 and above torque and prop law no longer cross
    /// for sure.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside these ranges, or not a number.</exception>
    public static TorqueCurve Linear(EngineRate rated, double slope) => slope is >= SteepestSlope and < 1
        ? new(rated, 1 - slope, slope, 0)
        : throw new ArgumentOutOfRangeException(nameof(slope), slope, "Must lie in -6 to less than 1.");

    /// <summary>f = Q_e/Q_rated [1]; zero where the curve would have the engine brake.</summary>
    /// <param name="rate">Engine rate.</param>
    public double RelativeTorque(EngineRate rate) => Math.Max(0, Value(Ratio(rate)));

    /// <summary>e = dlnQ_e/dlnN [1] at a rate.</summary>
    /// <param name="rate">Engine rate at which the engine has torque.</param>
    /// <exception cref="ArgumentOutOfRangeException">The engine has no torque at that rate.</exception>
    public double SlopeAt(EngineRate rate)
    {
        var x = Ratio(rate); // [1]
        return Value(x) > 0
            ? Slope(x)
            : throw new ArgumentOutOfRangeException(nameof(rate), rate, "The curve has no torque at this rate.");
    }

    internal double Ratio(EngineRate rate) => rate.RevolutionsPerMinute / _rated.RevolutionsPerMinute;

    internal double Value(double x) => _f0 + (x * (_f1 + (x * _f2)));

    internal double Slope(double x) => x * (_f1 + (2 * _f2 * x)) / Value(x);

    /// <summary>
    /// The x at which f(x) = c x^2, the torque of a prop at one J: the positive root of (c - f2) x^2 - f1 x - f0 = 0. There is always
    /// just one, for f0 &gt; 0 and f2 &lt;= 0. Written so that no two numbers of like size are subtracted.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal double CrossingOf(double c)
    {
        var a = c - _f2;
        var root = Math.Sqrt((_f1 * _f1) + (4 * a * _f0));
        return _f1 < 0 ? 2 * _f0 / (root - _f1) : (_f1 + root) / (2 * a);
    }
}
