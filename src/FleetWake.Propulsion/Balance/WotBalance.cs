using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>
/// The full balance at wide-open throttle: an engine's torque curve, a prop of a series and a hull's resistance, held together at
/// one well-known baseline. Immutable, safe to share; a solve allocates nothing.
/// </summary>
/// <remarks>
/// <para>Torque: Q_e(N) G eta = f_Q K_Q(J) rho n^2 D^5. Thrust: f_T K_T(J) rho n^2 D^4 (1 - t) = R_0 (V/V_0)^m. J = V (1 - w)/(n D),
/// n = N/G. The factors f_Q and f_T, the losses eta and t and the size of R_0 are what the baseline says, so they cancel: only
/// ratios to the baseline are solved for, and the level of a series, which is the least known, drops out.</para>
/// <para>At any J the torque equation has one positive rate in closed form (<see cref="TorqueCurve"/>); put into the thrust equation
/// it leaves one equation in ln J, solved by Newton's method inside a bracket that is halved when a step would leave it.</para>
/// </remarks>
public sealed class WotBalance
{
    private readonly WotBaseline _baseline;
    private readonly OpenWaterFamily _family;
    private readonly double _x0, _torque0;

    /// <summary>Calibrates a balance.</summary>
    /// <param name="series">The open-water series to lean on.</param>
    /// <param name="baseline">What was measured.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of <paramref name="baseline"/> outside its range, named; or the prop has
    /// no thrust left at the measured slip by this series: then the effective pitch is higher than the one given.</exception>
    public WotBalance(OpenWaterSeries series, WotBaseline baseline)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(baseline);
        baseline.Check();
        Series = series;
        _baseline = baseline;
        _family = series.Family(baseline.Shape);
        var curve = series.Curve(baseline.Shape);
        var end = curve.EndOfThrust ?? throw Endless(baseline.Shape); // [1]
        var J_0 = AdvanceRatio(baseline);                             // [1]
        if (J_0 >= end)
            throw new ArgumentOutOfRangeException(
                nameof(baseline), J_0,
                $"By the {series.Name} series a pitch ratio of {baseline.Shape.PitchRatio:0.###} has thrust up to J = {end:0.###} only; the effective pitch must be higher than the one given.");

        AtBaseline = curve.At(J_0);
        _x0 = baseline.Torque.Ratio(baseline.Rate);
        _torque0 = baseline.Torque.Value(_x0);
    }

    /// <summary>The series that the prop is taken from.</summary>
    public OpenWaterSeries Series { get; }

    /// <summary>What was calibrated with.</summary>
    public WotBaseline Baseline => _baseline;

    /// <summary>The prop at the baseline, as the series has it before calibration.</summary>
    public OpenWaterPoint AtBaseline { get; }

    /// <summary>The logarithmic slopes about the baseline, for <see cref="LinearBalance"/>.</summary>
    public BalanceSlopes Slopes => BalanceSlopes.Of(
        AtBaseline, _baseline.Shape, _baseline.ResistanceExponent, _baseline.Torque.SlopeAt(_baseline.Rate));

    /// <summary>Thrust at the baseline by the series, K_T rho n_0^2 D^4: the hull's resistance R_0, but for the factor f_T (1 - t).</summary>
    public Force BaselineThrust
    {
        get
        {
            var n = PropRate.Of(_baseline.Rate, _baseline.Gear).RevolutionsPerSecond; // [rev/s]
            var D = _baseline.Diameter.Metres;                                       // [m]
            var rho = _baseline.Water.KilogramsPerCubicMetre;                        // [kg/m3]
            return Force.FromNewtons(AtBaseline.ThrustCoefficient * rho * n * n * D * D * D * D);
        }
    }

    /// <summary>
    /// f_Q [1]: the torque that the engine has by its rated power, over what the series would take at the baseline. Near one when
    /// power, gear, effective pitch and area ratio are what they are said to be; a check of these, not part of the solution.
    /// </summary>
    /// <param name="rated">Rated power, at the prop shaft when <paramref name="efficiency"/> is one.</param>
    /// <param name="efficiency">eta of the gear [1], above 0 to 1; about 0.97 for power at the crankshaft (from memory).</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="efficiency"/> outside its range.</exception>
    public double TorqueCalibration(Power rated, double efficiency)
    {
        if (efficiency is not (> 0 and <= 1))
            throw new ArgumentOutOfRangeException(nameof(efficiency), efficiency, "Must lie above 0 to 1.");

        var n_r = _baseline.Torque.Rated.RevolutionsPerSecond;                     // [rev/s]
        var Q_e = rated.Watts / (2 * Math.PI * n_r) * _torque0;                    // [N.m] at the crankshaft
        var n = PropRate.Of(_baseline.Rate, _baseline.Gear).RevolutionsPerSecond;  // [rev/s]
        var D = _baseline.Diameter.Metres;                                         // [m]
        var rho = _baseline.Water.KilogramsPerCubicMetre;                          // [kg/m3]
        var Q = AtBaseline.TorqueCoefficient * rho * n * n * Math.Pow(D, 5);       // [N.m]
        return Q_e * _baseline.Gear.EnginePerPropTurn * efficiency / Q;
    }

    /// <summary>Where the boat settles at wide-open throttle in another state.</summary>
    /// <param name="state">How the boat differs from its baseline; <c>default</c> gives the baseline back.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of <paramref name="state"/> outside its range, named.</exception>
    public WotPoint Solve(in BoatState state) => Solve(state, _baseline.Shape, null);

    /// <summary>
    /// As <see cref="Solve(in BoatState)"/>, with other blades on the hub: the calibration stays, the shape changes. The doubt of such
    /// a comparison is that of the series between its shapes, not only of its slopes.
    /// </summary>
    /// <param name="state">How the boat differs besides; its changes of pitch and diameter count from the new prop.</param>
    /// <param name="shape">The other prop's blades.</param>
    /// <param name="diameter">The other prop's diameter, above zero; null for the baseline's.</param>
    /// <exception cref="ArgumentOutOfRangeException">As above, or a diameter of zero.</exception>
    public WotPoint Solve(in BoatState state, BladeShape shape, Length? diameter)
    {
        var frame = Frame(state, shape, diameter);
        var D = frame.Size; // D/D_0 [1]
        var perTorque = _torque0 * frame.Turns * frame.Turns / (_x0 * _x0) * D * D * D * D * D * frame.Water
            / (AtBaseline.TorqueCoefficient * (1 + state.EngineTorqueChange)); // c per K_Q: see TorqueCurve.CrossingOf
        var J = Root(frame, null, perTorque);
        return Point(frame, J, _baseline.Torque.CrossingOf(perTorque * frame.Prop.At(J).Torque));
    }

    /// <summary>
    /// The speed at a given engine rate, at whatever throttle holds it: the engine does not enter, so that neither its state nor the
    /// air does. True on plane only; the hull's one exponent does not reach across the hump.
    /// </summary>
    /// <param name="rate">Engine rate, above zero.</param>
    /// <param name="state">How the boat differs from its baseline. A hub that slips under full torque may hold at less: say so here.</param>
    /// <exception cref="ArgumentOutOfRangeException">A rate of zero, or a member of <paramref name="state"/> outside its range.</exception>
    public WotPoint SpeedAt(EngineRate rate, in BoatState state)
    {
        if (!(rate.RevolutionsPerMinute > 0))
            throw new ArgumentOutOfRangeException(nameof(rate), rate, "Must be above zero.");

        var frame = Frame(state, _baseline.Shape, null);
        var x = _baseline.Torque.Ratio(rate); // [1]
        return Point(frame, Root(frame, x, 0), x);
    }

    private WotPoint Point(in StateFrame frame, double J, double x)
    {
        var rate = EngineRate.FromRevolutionsPerMinute(x * _baseline.Torque.Rated.RevolutionsPerMinute);
        var n = PropRate.Of(rate, _baseline.Gear).RevolutionsPerSecond * frame.Turns;            // [rev/s]
        var V = J * n * _baseline.Diameter.Metres * frame.Size / (1 - _baseline.WakeFraction);   // [m/s]
        var loads = frame.Prop.At(J);
        return new WotPoint(
            rate, Speed.FromMetresPerSecond(V), J, frame.Prop.Extrapolated(J, loads.Thrust, loads.Torque));
    }

    /// <summary>What of a state does not change with J.</summary>
    private StateFrame Frame(in BoatState state, BladeShape shape, Length? diameter)
    {
        state.Check();
        var size = (diameter?.Metres ?? _baseline.Diameter.Metres) / _baseline.Diameter.Metres; // [1]
        if (!(size > 0))
            throw new ArgumentOutOfRangeException(nameof(diameter), diameter, "Must be above zero.");

        var bent = shape.WithPitchRatio(shape.PitchRatio * (1 + state.PitchChange) / (1 + state.DiameterChange));
        var sameBlades = shape.Blades == _baseline.Shape.Blades && shape.ExpandedAreaRatio == _baseline.Shape.ExpandedAreaRatio;
        var asNew = sameBlades ? _family.At(bent.PitchRatio) : Series.Curve(bent).Loads;
        var (dK_T, dK_Q) = SectionDrag.Change(bent, state.SectionDragChange); // [1]
        var prop = asNew.Changed(dK_T, dK_Q, 1 - state.ThrustLoss, 1 - state.TorqueLoss);
        return new StateFrame(
            prop, size * (1 + state.DiameterChange), 1 + state.WaterDensityChange, 1 - state.HubSlip,
            1 + state.ResistanceChange, LoadCurve.NoLongerAboveZero(prop.Thrust) ?? throw Endless(bent));
    }

    /// <summary>
    /// The J at which thrust is resistance: h = ln(K_T/K_T0 (n/n_0)^2 (D/D_0)^4 rho/rho_0 R_0/R) - m ln(V/V_0) = 0. h falls from plus to
    /// minus infinity between standing still and the end of thrust. The rate is held, or follows the torque.
    /// </summary>
    private double Root(in StateFrame frame, double? heldX, double perTorque)
    {
        var m = _baseline.ResistanceExponent;                                              // [1]
        var D = frame.Size;                                                                // D/D_0 [1]
        var scale = D * D * D * D * frame.Water / (frame.Resistance * AtBaseline.ThrustCoefficient); // [1]
        var J_0 = AtBaseline.AdvanceRatio;                                                 // [1]
        var (turnsPerX, sizePerJ) = (frame.Turns / _x0, D / J_0);
        var (low, high) = (0.0, frame.NoThrustAt);
        var J = Math.Min(J_0, 0.9 * high);
        for (var i = 0; i < 200; i++)
        {
            var loads = frame.Prop.At(J);
            var (h, slope) = (double.NegativeInfinity, -1.0); // without thrust the root lies below
            if (loads.Thrust > 0)
            {
                var x = heldX ?? _baseline.Torque.CrossingOf(perTorque * loads.Torque);       // [1]
                var nu = turnsPerX * x;                                                       // n/n_0 [1]
                var followed = heldX is null ? loads.A / (_baseline.Torque.Slope(x) - 2) : 0; // dln n/dlnJ [1]
                h = Math.Log(loads.Thrust * scale * nu * nu) - (m * Math.Log(J * sizePerJ * nu));
                slope = loads.B + ((2 - m) * followed) - m;                                   // dh/dlnJ [1]
            }

            (low, high) = h > 0 ? (J, high) : (low, J);
            var step = -h / slope;                            // of ln J, Newton's
            var next = J * (1 + (step * (1 + (step / 2))));   // e^step to the second order, which is as far as Newton goes
            if (!(next > low && next < high))
                next = (low + high) / 2;
            else if (Math.Abs(step) < 1e-8)
                return next; // the error of a step is of the order of its square
            if (next == J)
                return J;
            J = next;
        }

        return J;
    }

    /// <summary>Whether the prop has thrust at the measured slip by this series.</summary>
    internal static bool HasThrust(OpenWaterSeries series, WotBaseline baseline) =>
        series.Curve(baseline.Shape).EndOfThrust is { } end && AdvanceRatio(baseline) < end;

    /// <summary>J_0 = V_0 (1 - w)/(n_0 D) [1].</summary>
    internal static double AdvanceRatio(WotBaseline baseline)
    {
        var n_0 = PropRate.Of(baseline.Rate, baseline.Gear).RevolutionsPerSecond; // [rev/s]
        var V_A = baseline.Speed.MetresPerSecond * (1 - baseline.WakeFraction);   // [m/s]
        return V_A / (n_0 * baseline.Diameter.Metres);
    }

    private static ArgumentOutOfRangeException Endless(BladeShape shape) =>
        new(nameof(shape), shape, "By this series such a prop has no end of thrust: too far extrapolated.");

    private readonly record struct StateFrame(
        LoadCurve Prop, double Size, double Water, double Turns, double Resistance, double NoThrustAt);
}
