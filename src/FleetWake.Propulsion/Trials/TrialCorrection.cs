using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Trials;

/// <summary>Turns a trial as read into what it would have read at reference conditions.</summary>
public static class TrialCorrection
{
    /// <summary>N CF^g and V CF^(kappa g) of the means over opposed headings, with their doubt and all that widens it.</summary>
    /// <param name="reading">The trial.</param>
    /// <exception cref="ArgumentException">No runs.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A reading that cannot be; names it, its value and what it may be.</exception>
    public static CorrectedTrial Of(TrialReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Runs.Count == 0)
            throw new ArgumentException("A trial needs at least one run.", nameof(reading));

        var doubts = new List<TrialDoubt>();
        var timed = reading.Runs.Where(run => run.Speed is not null)
            .Select(run => new TimedRun(run.Speed!.Value, run.HeadingDegrees)).ToArray();
        var speed = timed.Length == 0 ? null : TwoWayMean.Of(timed);
        var rpms = TwoWayMean.Of([.. reading.Runs.Select(
            run => new TimedRun(Speed.FromKnots(run.Engine.RevolutionsPerMinute), run.HeadingDegrees))]);
        var N = rpms.Speed.Knots; // [rev/min] the same weights as the speed's
        if (rpms.Method == MeanSpeedMethod.SingleRun)
            doubts.Add(TrialDoubt.SingleRun);
        if (rpms.Method == MeanSpeedMethod.HeadingsNotOpposed)
            doubts.Add(TrialDoubt.HeadingsNotOpposed);
        if (reading.Runs.Any(run => run.LimiterReached))
            doubts.Add(TrialDoubt.LimiterReached);

        var air = reading.Conditions.Air ?? AirState.Unknown;
        var correction = PowerCorrections.Of(air);
        var apply = correction.InValidity && reading.Engine.Breathing == AirResponse.NaturallyAspirated;
        var g = reading.Response.Gain;
        var CF = correction.Factor;
        var lnCF = Math.Log(CF.Value);
        var factor = apply ? Math.Exp(g.Value * lnCF) : 1;
        var byAir = Math.Sqrt(Math.Pow(lnCF * g.StandardDeviation, 2) + Math.Pow(g.Value * CF.StandardDeviation / CF.Value, 2));
        var sd = Math.Sqrt(Math.Pow(0.007, 2) + Math.Pow(apply ? byAir : g.Value * lnCF, 2));
        if (!correction.InValidity)
            doubts.Add(TrialDoubt.OutsideValidity);
        if (air.StationPressure is null)
            doubts.Add(TrialDoubt.PressureMissing);

        var knots = speed is null ? (Uncertain?)null : new Uncertain(speed.Speed.Knots, 0.015 * speed.Speed.Knots);
        var byKappa = Math.Pow(factor, reading.Response.Kappa.Value);
        var slip = speed is null || reading.Engine.Gear is null || reading.Prop is null
            ? (Uncertain?)null
            : new Uncertain(
                Slip.ApparentSlipFraction(
                    speed.Speed, EngineRate.FromRevolutionsPerMinute(N), reading.Engine.Gear.Value, reading.Prop.Pitch),
                0.017);
        return new CorrectedTrial(
            new Uncertain(N, 0.007 * N),
            knots,
            slip,
            apply ? correction : null,
            new Uncertain(N * factor, N * factor * sd),
            knots is { } v ? new Uncertain(v.Value * byKappa, v.Value * byKappa * Math.Max(0.015, sd)) : null,
            speed?.Method ?? rpms.Method,
            doubts);
    }
}
