using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Logs;

/// <summary>Takes runs as somebody typed them, each checked by itself.</summary>
/// <param name="log">Where they go.</param>
/// <param name="count">How many there are: a single run needs no heading, for nothing is paired with it.</param>
internal sealed class TypedRuns(LogBuilder log, int count)
{
    /// <summary>Takes a run whose numbers can be.</summary>
    /// <param name="run">The run.</param>
    /// <param name="withoutRpm">What to say when it has no rate.</param>
    /// <param name="withoutHeading">What to say when it has no heading and needs one.</param>
    /// <param name="line">Where it stands.</param>
    internal void Take(TypedRun run, string withoutRpm, string withoutHeading, int line)
    {
        if (run.Rpm is not { } rpm)
        {
            log.Drop(line, withoutRpm);
            return;
        }

        if (run.HeadingDegrees is null && count > 1)
        {
            log.Drop(line, withoutHeading);
            return;
        }

        log.Run(new RunReading(
            EngineRate.FromRevolutionsPerMinute(rpm), run.Knots is { } kn ? Speed.FromKnots(kn) : null, Turn.Of(run.HeadingDegrees ?? 0))
        {
            Held = run.HeldSeconds is { } s ? TimeSpan.FromSeconds(s) : null,
            LimiterReached = run.Limiter,
            Ventilated = run.Ventilated,
        });
    }
}
