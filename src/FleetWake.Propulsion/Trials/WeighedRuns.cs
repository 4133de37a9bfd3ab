namespace FleetWake.Propulsion.Trials;

/// <summary>The runs of a trial as one RPM and one speed, with what the runs themselves leave open.</summary>
/// <param name="Rpm">Mean RPM as read, its doubt from runs and gauge step.</param>
/// <param name="Knots">Mean speed; null when no run has one.</param>
/// <param name="RpmOfTimedRuns">Mean RPM [rev/min] of the runs that have a speed, weighed as the speed is.</param>
/// <param name="Method">How the mean speed was made; without one, the mean RPM.</param>
internal readonly record struct WeighedRuns(
    Uncertain Rpm, Uncertain? Knots, double RpmOfTimedRuns, MeanSpeedMethod Method)
{
    private const int Few = 16; // more than a trial has; beyond it the room comes from the heap

    internal static WeighedRuns Of(IReadOnlyList<RunReading> runs, EngineRate? step, ref DoubtSet doubts)
    {
        var n = runs.Count;
        Span<double> headings = n <= Few ? stackalloc double[n] : new double[n];
        Span<double> weights = n <= Few ? stackalloc double[n] : new double[n];
        Span<double> rpm = n <= Few ? stackalloc double[n] : new double[n];
        Span<double> knots = n <= Few ? stackalloc double[n] : new double[n];
        Span<bool> isOut = n <= Few ? stackalloc bool[n] : new bool[n];

        for (var i = 0; i < n; i++)
            (headings[i], rpm[i]) = (runs[i].HeadingDegrees, runs[i].Engine.RevolutionsPerMinute);
        var all = new Opposition(headings, isOut, weights);
        var N = RpmReading.Of(runs, rpm, all, step, ref doubts);

        var timed = 0;
        for (var i = 0; i < n; i++)
            if (runs[i].Speed is { } speed)
            {
                (headings[timed], rpm[timed], knots[timed]) =
                    (runs[i].HeadingDegrees, runs[i].Engine.RevolutionsPerMinute, speed.Knots);
                timed++;
            }

        var method = all.Method;
        Uncertain? V = null;
        var rpmOfTimed = N.Value;
        if (timed > 0)
        {
            var some = new Opposition(headings[..timed], isOut[..timed], weights[..timed]);
            V = SpeedReading.Of(runs, knots[..timed], some, ref doubts);
            (method, rpmOfTimed) = (some.Method, some.Mean(rpm[..timed]));
        }

        doubts.Add(TrialDoubt.SingleRun, method == MeanSpeedMethod.SingleRun);
        doubts.Add(TrialDoubt.HeadingsNotOpposed, method == MeanSpeedMethod.HeadingsNotOpposed);
        return new WeighedRuns(N, V, rpmOfTimed, method);
    }
}
