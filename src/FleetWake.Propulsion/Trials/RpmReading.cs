namespace FleetWake.Propulsion.Trials;

/// <summary>The mean RPM of a trial's runs, as its tachometer showed it.</summary>
internal static class RpmReading
{
    internal static Uncertain Of(
        IReadOnlyList<RunReading> runs,
        ReadOnlySpan<double> rpm,
        in Opposition opposition,
        EngineRate? toldStep,
        ref DoubtSet doubts)
    {
        var N = opposition.Mean(rpm); // [rev/min]
        var variance = RunSpread.OfOneRun(TrialNoise.RunRpm * N, opposition, rpm) * opposition.SumOfSquaredWeights;
        var d = toldStep is { RevolutionsPerMinute: > 0 and var told } ? told : StepOf(rpm); // [rev/min]
        var rounded = false;
        for (var i = 0; i < runs.Count; i++)
        {
            var (run, n) = (runs[i], rpm[i]);
            var scatter = run.RpmScatter ?? 0; // [rev/min]
            var w = opposition.Weight(i);
            variance += w * w * (RunSpread.WithinRun(scatter, run.Held) + (n * n * Extra(run)));
            rounded |= scatter <= d / 2;
            doubts.Add(TrialDoubt.LimiterReached, run.LimiterReached);
            doubts.Add(TrialDoubt.Ventilation, run.Ventilated);
            doubts.Add(TrialDoubt.ShortRun, RunSpread.IsShort(run));
            doubts.Add(TrialDoubt.RpmNoise, scatter > TrialLimits.RpmNoise * n);
        }

        // Rounding leaves d/12^0.5, uniform over a step. It is taken whole however many runs there are: runs that show one number
        // share one rounding, and where they differ this errs to the safe side. A run whose readings scatter by more than half a step
        // (one standard deviation) has it in its scatter; it is left out only when all runs do.
        variance += rounded ? d * d / 12 : 0;
        doubts.Add(TrialDoubt.CoarseTachometer, d / Math.Sqrt(12) > TrialLimits.CoarseStep * N);

        var (least, most) = (rpm[0], rpm[0]); // [rev/min]
        foreach (var n in rpm)
            (least, most) = (Math.Min(least, n), Math.Max(most, n));
        var implausible = most - least > TrialLimits.RpmImplausible * N;
        doubts.Add(TrialDoubt.RpmImplausible, implausible);

        // Two headings that disagree leave the truth anywhere between them: uniform over the split.
        // So do runs of which one cannot be right, whichever way they went; those are not laid to the headings.
        var split = implausible ? most - least : opposition.RemovesCurrent ? opposition.Split(rpm) : 0; // [rev/min]
        var disagree = split > TrialLimits.RpmSplit * N && split > d;
        variance += disagree ? split * split / 12 : 0;
        doubts.Add(TrialDoubt.RpmSplit, disagree && !implausible);
        return new Uncertain(N, Math.Sqrt(variance));
    }

    private static double Extra(RunReading run) =>
        (run.Ventilated ? TrialNoise.Ventilation * TrialNoise.Ventilation : 0)
        + (RunSpread.IsShort(run) ? TrialNoise.ShortRun * TrialNoise.ShortRun : 0)
        + (run.LimiterReached ? TrialNoise.Limiter * TrialNoise.Limiter : 0);

    /// <summary>The step when nobody told it: 50, 10 or 1 rev/min, the largest that every reading is a whole multiple of.</summary>
    private static double StepOf(ReadOnlySpan<double> rpm)
    {
        var step = 50.0; // [rev/min]; common practice, no source
        foreach (var n in rpm)
            while (step > 1 && n % step != 0)
                step = step > 10 ? 10 : 1;
        return step;
    }
}
