using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>
/// The pitch that a prop works with, as torque tells it. Cup, progressive pitch and casting tolerance put it several per cent from
/// the stamp, mostly above it, so that a stamped pitch may have no thrust left at the slip that was measured.
/// </summary>
public static class EffectivePitch
{
    /// <summary>
    /// The pitch at which the series takes just the torque that the engine has by its rated power: f_Q = 1. Low confidence: an error
    /// of the power, of the area ratio or of the series goes into it.
    /// </summary>
    /// <param name="series">The series to lean on.</param>
    /// <param name="baseline">What was measured; the pitch ratio of its shape is not used.</param>
    /// <param name="rated">Rated power, at the prop shaft when <paramref name="efficiency"/> is one.</param>
    /// <param name="efficiency">eta of the gear [1], above 0 to 1.</param>
    /// <returns>The pitch; null when none from half to three times the advance of the boat in one turn would take it.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A member of <paramref name="baseline"/> or the efficiency outside its range.</exception>
    public static Length? ByTorque(OpenWaterSeries series, WotBaseline baseline, Power rated, double efficiency)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(baseline);
        baseline.Check();
        var J = WotBalance.AdvanceRatio(baseline); // [1]
        var (low, high) = (Math.Clamp(J / 2, 0.1, 3), Math.Clamp(3 * J, 0.1, 3)); // P/D [1]
        if (Spare(high) > 0)
            return null;

        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            if (Spare(middle) > 0)
                low = middle;
            else
                high = middle;
        }

        // Without thrust no hull is pushed, whatever the torque: then the walk has only found where thrust begins.
        return Math.Abs(Spare(high)) < 1e-6 ? Length.FromMetres(high * baseline.Diameter.Metres) : null;

        double Spare(double pitchRatio)
        {
            var tried = baseline with { Shape = baseline.Shape.WithPitchRatio(pitchRatio) };
            return WotBalance.HasThrust(series, tried)
                ? new WotBalance(series, tried).TorqueCalibration(rated, efficiency) - 1
                : double.PositiveInfinity;
        }
    }
}
