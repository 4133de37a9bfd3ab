namespace FleetWake.Propulsion.Trials;

/// <summary>The mean speed of the runs that have one.</summary>
internal static class SpeedReading
{
    internal static Uncertain Of(
        IReadOnlyList<RunReading> runs, ReadOnlySpan<double> knots, in Opposition opposition, ref DoubtSet doubts)
    {
        var V = opposition.Mean(knots); // [kn]
        var variance = RunSpread.OfOneRun(TrialNoise.RunSpeed * V, opposition, knots) * opposition.SumOfSquaredWeights;
        var timed = 0;
        for (var i = 0; i < runs.Count; i++)
        {
            var run = runs[i];
            if (run.Speed is null)
                continue;

            var v = knots[timed];
            var w = opposition.Weight(timed++);
            var scatter = run.SpeedScatterKnots ?? 0; // [kn]
            var own = (TrialNoise.GpsKnots * TrialNoise.GpsKnots) + RunSpread.WithinRun(scatter, run.Held)
                + (v * v * Extra(run));
            variance += w * w * own;
            doubts.Add(TrialDoubt.SpeedNoise, scatter > Math.Max(TrialLimits.SpeedNoiseKnots, TrialLimits.SpeedNoise * v));
        }

        variance += opposition.RemovesCurrent ? 0 : TrialNoise.CurrentKnots * TrialNoise.CurrentKnots;
        return new Uncertain(V, Math.Sqrt(variance));
    }

    private static double Extra(RunReading run) =>
        (run.Ventilated ? TrialNoise.Ventilation * TrialNoise.Ventilation : 0)
        + (RunSpread.IsShort(run) ? 4 * TrialNoise.ShortRun * TrialNoise.ShortRun : 0);
}
