namespace FleetWake.Propulsion.Trials;

/// <summary>The slip of a trial, with its doubt.</summary>
internal static class SlipReading
{
    /// <summary>Slip where pitch, gear ratio and speed are known; else null.</summary>
    /// <param name="reading">The trial.</param>
    /// <param name="means">Its means.</param>
    /// <param name="tachometer">What the tachometer shows over what is true [1]; 1 when that was never told.</param>
    /// <param name="doubts">Where to tell a slip below zero.</param>
    internal static Uncertain? Of(TrialReading reading, in WeighedRuns means, Uncertain tachometer, ref DoubtSet doubts)
    {
        if (reading is not { Engine.Gear: { } gear, Prop.Pitch: var pitch } || means.Knots is not { } knots)
            return null;

        var V = knots.Value;                                                             // [kn]
        var N = EngineRate.FromRevolutionsPerMinute(means.RpmOfTimedRuns / tachometer.Value); // [rev/min]
        var V_th = Slip.TheoreticalSpeed(N, gear, pitch).Knots;                          // [kn]
        var ratio = V / V_th;                                                            // [1]

        // First order, V and N independent. The pitch is taken as told: what it is off by is the same in every trial.
        var byN = Math.Sqrt(Square(means.Rpm.StandardDeviation / means.Rpm.Value)
            + Square(tachometer.StandardDeviation / tachometer.Value));                  // [1]
        var sd = Math.Sqrt(Square(knots.StandardDeviation / V_th) + Square(ratio * byN)); // [1]
        doubts.Add(TrialDoubt.NegativeSlip, ratio > 1);
        doubts.Add(TrialDoubt.AboveTheoretical, ratio > 1 + TrialLimits.AboveTheoretical);
        return new Uncertain(1 - ratio, sd);
    }

    private static double Square(double x) => x * x;
}
