using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Trials;

/// <summary>
/// Turns a trial as read into what it would have read at reference conditions, air of 25 deg C and 990 hPa dry:
/// N_ref = N CF^g and V_ref = V CF^(kappa g).
/// </summary>
/// <remarks>
/// CF brings engine power to reference air (<see cref="PowerCorrections"/>). The linear balance turns a change of power at a
/// given rate into one of RPM by g and carries the boat along its hull-and-prop line by kappa
/// (<see cref="Balance.BalanceSlopes"/>). Doubts are carried to first order; those of g and kappa, of the air, of runs and
/// gauge, of what is unlike the baseline, are taken as independent. Which doubt is told from where on stands in
/// <see cref="TrialLimits"/>, and what it widens by in <see cref="TrialNoise"/>. Runs are taken in their order as equally
/// spaced in time; when they began is not looked at.
/// </remarks>
public static class TrialCorrection
{
    /// <summary>The trial at reference conditions.</summary>
    /// <param name="reading">
    /// The trial: 1 to 200 runs, each above 0 up to 20 000 rev/min and 0 to 200 kn; pitch above 0 up to 3 m; gear ratio above
    /// 0 up to 20; air as <see cref="AirAssumptions.Of"/> takes it.
    /// </param>
    /// <returns>
    /// RPM is the mean with the same weights as the speed's. Nothing is corrected at part throttle; nothing is corrected,
    /// and the whole of what the correction might have been widens the doubt, when CF lies outside 0.93 to 1.07 or the
    /// engine hides the air. Unlike trim, load or water widen and do not correct. A speed above the theoretical one is
    /// kept and flagged. A tachometer of known error is brought right in the corrected RPM and in slip, not in the RPM as
    /// read; what the check left open of it is shared by all trials of that gauge and stands beside, in
    /// <see cref="CorrectedTrial.UncheckedTachometerRpm"/>.
    /// </returns>
    /// <exception cref="ArgumentException">A run that is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">No runs or more than 200, or a reading that cannot be; names it as
    /// <c>Runs[1].Engine</c>, with its value and its range.</exception>
    public static CorrectedTrial Of(TrialReading reading)
    {
        TrialBounds.Check(reading);
        var doubts = default(DoubtSet);
        var means = WeighedRuns.Of(reading.Runs, reading.Engine.TachometerStep, ref doubts);
        var error = reading.Engine.TachometerError;
        var tachometer = new Uncertain(1 + (error?.Value ?? 0), error?.StandardDeviation ?? 0); // [1] shown over true
        var slip = SlipReading.Of(reading, means, tachometer, ref doubts);
        var air = AirCorrection.Of(reading, ref doubts);
        var left = air.Left + Unlikeness.Of(reading, means.Knots?.Value, ref doubts);
        doubts.Add(TrialDoubt.TachometerCorrected, error is { Value: not 0 });
        doubts.Add(TrialDoubt.PartThrottle, reading.PartThrottle);

        var N = means.Rpm.Value / tachometer.Value * air.RpmFactor; // [rev/min]
        var byN = Square(means.Rpm.StandardDeviation / means.Rpm.Value)
            + Square(TrialNoise.TrialRpm) + left.Rpm;               // [1] variance of ln N
        return new CorrectedTrial(
            means.Rpm,
            means.Knots,
            slip,
            air.Applied ? air.Correction : null,
            new Uncertain(N, N * Math.Sqrt(byN)),
            means.Knots is { } knots ? AtReference(knots, air.SpeedFactor, left.Speed) : null,
            means.Method,
            doubts.ToArray())
        {
            NotApplied = air.Applied ? null : air.Correction,
            UncheckedTachometerRpm = N * (error is null ? TrialNoise.UncheckedTachometer : tachometer.StandardDeviation / tachometer.Value),
            LogCovariance = means.Knots is null ? 0 : left.Both,
        };
    }

    /// <summary>Written so that a boat that did not move has a doubt, too: its logarithm has none.</summary>
    private static Uncertain AtReference(Uncertain knots, double factor, double left)
    {
        var V = knots.Value * factor; // [kn]
        return new Uncertain(
            V,
            Math.Sqrt(Square(knots.StandardDeviation * factor) + (V * V * (Square(TrialNoise.TrialSpeed) + left))));
    }

    private static double Square(double x) => x * x;
}
