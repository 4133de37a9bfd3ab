namespace FleetWake.Propulsion.OpenWater;

/// <summary>K_T and K_Q of one shape over J. Made by <see cref="OpenWaterSeries.Curve"/>; a value, nothing is allocated.</summary>
public readonly struct OpenWaterCurve
{
    /// <summary>The highest J that is answered [1]; far beyond the end of thrust of the steepest prop here.</summary>
    public const double HighestAdvance = 3;

    private readonly Cubic _thrust, _torque, _thrustByPitch, _torqueByPitch;
    private readonly double _pitchRatio, _lowest, _highest;
    private readonly bool _inRange;

    internal OpenWaterCurve(
        double pitchRatio, Cubic thrust, Cubic torque, Cubic thrustByPitch, Cubic torqueByPitch,
        bool inRange, double lowestAdvance, double highestAdvance)
    {
        _pitchRatio = pitchRatio;
        (_thrust, _torque, _thrustByPitch, _torqueByPitch) = (thrust, torque, thrustByPitch, torqueByPitch);
        (_inRange, _lowest, _highest) = (inRange, lowestAdvance, highestAdvance);
    }

    /// <summary>K_T, K_Q and their slopes.</summary>
    /// <param name="advanceRatio">J [1], 0 to 3. Beyond the end of thrust the values are negative and marked extrapolated.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number, or outside 0 to 3.</exception>
    public OpenWaterPoint At(double advanceRatio)
    {
        var J = advanceRatio; // [1]
        if (!(J >= 0 && J <= HighestAdvance))
            throw new ArgumentOutOfRangeException(nameof(advanceRatio), J, "Must lie in 0 to 3.");

        var K_T = _thrust.At(J); // [1]
        var extrapolated = !_inRange || J < _lowest || J > _highest || K_T < 0;
        return new OpenWaterPoint(
            J, _pitchRatio, K_T, _torque.At(J), _thrust.SlopeAt(J), _torque.SlopeAt(J),
            _thrustByPitch.At(J), _torqueByPitch.At(J), extrapolated);
    }

    /// <summary>The same curve with constants added to K_T and K_Q, as drag of the blade sections adds them.</summary>
    internal OpenWaterCurve Raised(double byThrust, double byTorque) => new(
        _pitchRatio, _thrust + new Cubic(byThrust, 0, 0, 0), _torque + new Cubic(byTorque, 0, 0, 0),
        _thrustByPitch, _torqueByPitch, _inRange, _lowest, _highest);

    /// <summary>
    /// The lowest J at which there is no thrust left [1]; null when there is none up to 3, as some extrapolated shapes have it.
    /// </summary>
    public double? EndOfThrust => FirstZero(_thrust);

    /// <summary>
    /// The lowest J at which there is no torque left [1]; null as above. Comes after <see cref="EndOfThrust"/> in any prop that
    /// wastes work, a check that several misprinted coefficients fail.
    /// </summary>
    public double? EndOfTorque => FirstZero(_torque);

    /// <summary>Walks up J and closes in by halving: a cubic has few bends, and a walk finds the first zero, not any.</summary>
    private static double? FirstZero(Cubic curve)
    {
        const double step = HighestAdvance / 60;
        var low = 0.0;
        if (!(curve.At(low) > 0))
            return 0;

        for (var walked = 1; walked <= 60; walked++)
        {
            var high = walked * step;
            if (curve.At(high) > 0)
            {
                low = high;
                continue;
            }

            for (var i = 0; i < 50; i++)
            {
                var middle = (low + high) / 2;
                if (curve.At(middle) > 0)
                    low = middle;
                else
                    high = middle;
            }

            return high;
        }

        return null;
    }
}
