namespace FleetWake.Propulsion.OpenWater;

/// <summary>
/// A family of model props that was run in open water, as its published regression polynomials. Immutable, safe to share.
/// </summary>
/// <remarks>
/// None of the three is a family of outboard props: hub, exhaust, cup and rake are missing. They serve for slopes, while levels are
/// calibrated at a boat's baseline, and their disagreement is the honest measure of what is not known (<c>Balance.ModelSpread</c>).
/// </remarks>
public sealed class OpenWaterSeries
{
    private readonly SeriesTerm[] _thrust;
    private readonly SeriesTerm[] _torque;
    private readonly SeriesTerm[] _thrustByReynolds = [];
    private readonly SeriesTerm[] _torqueByReynolds = [];
    private readonly bool _developedArea;

    internal OpenWaterSeries(
        string name, SeriesRange range, SeriesTerm[] thrust, SeriesTerm[] torque, bool developedArea = false)
    {
        Name = name;
        Range = range;
        _thrust = thrust;
        _torque = torque;
        _developedArea = developedArea;
    }

    private OpenWaterSeries(
        string name, SeriesRange range, SeriesTerm[] thrust, SeriesTerm[] torque,
        SeriesTerm[] thrustByReynolds, SeriesTerm[] torqueByReynolds)
        : this(name, range, thrust, torque) =>
        (_thrustByReynolds, _torqueByReynolds) = (thrustByReynolds, torqueByReynolds);

    /// <summary>
    /// Wageningen B screws, 2 to 7 blades, aerofoil sections (Oosterveld and van Oossanen 1975). Range by University of Michigan
    /// report 237. Two blades disagree with Kuiper's charts of 1992 (second-hand).
    /// </summary>
    public static OpenWaterSeries WageningenB { get; } = new(
        "Wageningen B", new(2, 7, 0.30, 1.05, 0.5, 1.4, 0, 1.6), WageningenBTerms.Thrust, WageningenBTerms.Torque,
        WageningenBTerms.ThrustByReynolds, WageningenBTerms.TorqueByReynolds);

    /// <summary>
    /// Gawn's flat-faced segmental sections, 3 blades (Gawn 1953; Blount and Hubble 1981). Limits of the polynomial from memory, of
    /// J as the transcription clamps it. Confidence medium: one transcription.
    /// </summary>
    public static OpenWaterSeries Gawn { get; } = new(
        "Gawn", new(3, 3, 0.5, 1.1, 0.8, 1.4, 0.3, 1.8), GawnTerms.Thrust, GawnTerms.Torque);

    /// <summary>
    /// Gawn and Burrill's KCA series, 3 blades, to P/D = 2: the only one that covers steep outboard props (Gawn and Burrill 1957;
    /// Radojcic 1988). Its J begins at half the area ratio.
    /// </summary>
    public static OpenWaterSeries GawnBurrill { get; } = new(
        "Gawn-Burrill KCA", new(3, 3, 0.5, 1.1, 0.8, 2.0, 0.25, 2.0), GawnBurrillTerms.Thrust, GawnBurrillTerms.Torque,
        developedArea: true);

    /// <summary>All series there are.</summary>
    public static IReadOnlyList<OpenWaterSeries> All { get; } = [WageningenB, Gawn, GawnBurrill];

    /// <summary>The series' name.</summary>
    public string Name { get; }

    /// <summary>Where its values are more than extrapolation.</summary>
    public SeriesRange Range { get; }

    /// <summary>
    /// The curves of K_T and K_Q of one shape. Every term's power of J is at most three, so that a shape is a pair of cubics, and
    /// their slopes by P/D another pair; what varies in a solver's loop costs four multiplications, and nothing is allocated.
    /// </summary>
    /// <param name="shape">The blades.</param>
    /// <param name="reynoldsNumber">
    /// R_n [1] of the section at 0.75 of the radius, 2e6 to 2e9, to correct for it; null for the series' own 2e6, which a small
    /// outboard prop at full throttle happens to be near. Published for the Wageningen B series only. That L is
    /// log10 R_n - 0.301 is the usual reading of the increments, an assumption; they do not vanish exactly at 2e6.
    /// </param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="shape"/> is <c>default</c>, or
    /// <paramref name="reynoldsNumber"/> outside its range.</exception>
    /// <exception cref="ArgumentException">A Reynolds number for a series that has no correction.</exception>
    public OpenWaterCurve Curve(BladeShape shape, double? reynoldsNumber = null)
    {
        if (shape.Blades == 0)
            throw new ArgumentOutOfRangeException(nameof(shape), shape, "No blade shape was given.");

        var area = Area(shape);
        var (thrust, thrustByPitch) = Cubics.Of(_thrust, shape.PitchRatio, area, shape.Blades);
        var (torque, torqueByPitch) = Cubics.Of(_torque, shape.PitchRatio, area, shape.Blades);
        if (reynoldsNumber is { } R_n)
        {
            var L = ReynoldsL(R_n); // [1]
            var (dThrust, dThrustByPitch) = Cubics.Of(_thrustByReynolds, shape.PitchRatio, area, shape.Blades, L);
            var (dTorque, dTorqueByPitch) = Cubics.Of(_torqueByReynolds, shape.PitchRatio, area, shape.Blades, L);
            (thrust, thrustByPitch) = (thrust + dThrust, thrustByPitch + dThrustByPitch);
            (torque, torqueByPitch) = (torque + dTorque, torqueByPitch + dTorqueByPitch);
        }

        var loads = new LoadCurve(
            thrust, torque, Range.Holds(shape.Blades, area, shape.PitchRatio), LowestAdvance(shape), Range.HighestAdvance);
        return new OpenWaterCurve(shape.PitchRatio, loads, thrustByPitch, torqueByPitch);
    }

    /// <summary>K_T, K_Q and their slopes at one point; <see cref="Curve"/> is the way when there are many.</summary>
    /// <param name="shape">The blades.</param>
    /// <param name="advanceRatio">J [1], 0 to 3.</param>
    /// <exception cref="ArgumentOutOfRangeException">As for <see cref="Curve"/> and <see cref="OpenWaterCurve.At"/>.</exception>
    public OpenWaterPoint At(BladeShape shape, double advanceRatio) => Curve(shape).At(advanceRatio);

    /// <summary>The series' name.</summary>
    public override string ToString() => Name;

    /// <summary>All pitches of these blades at this area.</summary>
    internal OpenWaterFamily Family(BladeShape shape) =>
        new(_thrust, _torque, Range, shape.Blades, Area(shape), LowestAdvance(shape));

    private double Area(BladeShape shape) => _developedArea ? DevelopedArea(shape) : shape.ExpandedAreaRatio;

    private double LowestAdvance(BladeShape shape) =>
        _developedArea ? Math.Max(Range.LowestAdvance, shape.ExpandedAreaRatio / 2) : Range.LowestAdvance;

    private double ReynoldsL(double reynoldsNumber)
    {
        if (_thrustByReynolds.Length == 0)
            throw new ArgumentException($"No correction for it is published for the {Name} series.", nameof(reynoldsNumber));

        return reynoldsNumber is >= 2e6 and <= 2e9
            ? Math.Log10(reynoldsNumber) - 0.301
            : throw new ArgumentOutOfRangeException(nameof(reynoldsNumber), reynoldsNumber, "Must lie in 2e6 to 2e9.");
    }

    /// <summary>A_D/A_0 from A_E/A_0 = 0.34 A_D (2.75 + A_D/Z) (as transcribed with Radojcic 1988), solved for its positive root.</summary>
    private static double DevelopedArea(BladeShape shape)
    {
        var a = 0.34 / shape.Blades;            // [1]
        const double b = 0.34 * 2.75;           // [1]
        var A_E = shape.ExpandedAreaRatio;      // [1]
        return (-b + Math.Sqrt((b * b) + (4 * a * A_E))) / (2 * a);
    }
}
