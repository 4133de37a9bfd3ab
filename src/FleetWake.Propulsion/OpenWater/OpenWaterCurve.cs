namespace FleetWake.Propulsion.OpenWater;

/// <summary>K_T and K_Q of one shape over J. Made by <see cref="OpenWaterSeries.Curve"/>; a value, nothing is allocated.</summary>
public readonly struct OpenWaterCurve
{
    /// <summary>The highest J that is answered [1]; far beyond the end of thrust of the steepest prop here.</summary>
    public const double HighestAdvance = 3;

    private readonly LoadCurve _loads;
    private readonly Cubic _thrustByPitch, _torqueByPitch;
    private readonly double _pitchRatio;

    internal OpenWaterCurve(double pitchRatio, LoadCurve loads, Cubic thrustByPitch, Cubic torqueByPitch)
    {
        (_pitchRatio, _loads) = (pitchRatio, loads);
        (_thrustByPitch, _torqueByPitch) = (thrustByPitch, torqueByPitch);
    }

    /// <summary>
    /// The lowest J at which there is no thrust left [1]; null when there is none up to 3, as some extrapolated shapes have it.
    /// </summary>
    public double? EndOfThrust => LoadCurve.FirstZero(_loads.Thrust);

    /// <summary>
    /// The lowest J at which there is no torque left [1]; null as above. Comes after <see cref="EndOfThrust"/> in any prop that
    /// wastes work, a check that several misprinted coefficients fail.
    /// </summary>
    public double? EndOfTorque => LoadCurve.FirstZero(_loads.Torque);

    internal LoadCurve Loads => _loads;

    /// <summary>K_T, K_Q and their slopes.</summary>
    /// <param name="advanceRatio">J [1], 0 to 3. Beyond the end of thrust the values are negative and marked extrapolated.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside 0 to 3.</exception>
    public OpenWaterPoint At(double advanceRatio)
    {
        var J = advanceRatio; // [1]
        if (!(J >= 0 && J <= HighestAdvance))
            throw new ArgumentOutOfRangeException(nameof(advanceRatio), J, "Must lie in 0 to 3.");

        var (K_T, K_Q) = (_loads.Thrust.At(J), _loads.Torque.At(J)); // [1]
        return new OpenWaterPoint(
            J, _pitchRatio, K_T, K_Q, _loads.Thrust.SlopeAt(J), _loads.Torque.SlopeAt(J),
            _thrustByPitch.At(J), _torqueByPitch.At(J), _loads.Extrapolated(J, K_T, K_Q));
    }
}
