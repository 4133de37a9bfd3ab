using System.Globalization;

namespace FleetWake.Propulsion.Trials;

/// <summary>
/// What a reading can be at all. These are wide: they keep out a slip of the pen or of a unit, not a surprising boat, which
/// is flagged instead. All are common practice, no source.
/// </summary>
internal static class TrialBounds
{
    /// <summary>More runs than this are a log, not a trial.</summary>
    internal const int MostRuns = 200;

    /// <summary>Refuses the first reading that cannot be, by its name in the trial, as <c>Runs[1].Engine</c>.</summary>
    /// <exception cref="ArgumentException">A run that is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number outside its range, or no runs or too many.</exception>
    internal static void Check(TrialReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(reading.Runs);
        ArgumentNullException.ThrowIfNull(reading.Conditions);
        ArgumentNullException.ThrowIfNull(reading.Engine);
        ArgumentNullException.ThrowIfNull(reading.Response);
        _ = Reject.Outside(1, MostRuns, "runs", reading.Runs.Count, "Runs");
        for (var i = 0; i < reading.Runs.Count; i++)
            Check(reading.Runs[i], i);
        Check(reading.Conditions, nameof(reading.Conditions));
        if (reading.Baseline is { } baseline)
            Check(baseline, nameof(reading.Baseline));
        Check(reading.Engine);
        Within(0, 2, "", reading.Response.Gain, "Response.Gain");
        Within(0, 3, "", reading.Response.Kappa, "Response.Kappa");
        if (reading.Displacement is { } displacement)
            _ = Reject.Outside(50, 100_000, "kg", displacement.Kilograms, nameof(reading.Displacement));
        if (reading.Prop is { } prop)
            _ = AboveZero(3, "m", prop.Pitch.Metres, "Prop.Pitch");
    }

    private static void Check(RunReading run, int i)
    {
        if (run is null)
            throw new ArgumentException("A run must not be null.", Of(i, null));

        if (run.Engine.RevolutionsPerMinute is not (> 0 and <= 20_000))
            _ = AboveZero(20_000, "rev/min", run.Engine.RevolutionsPerMinute, Of(i, nameof(run.Engine)));
        if (!double.IsFinite(run.HeadingDegrees))
            throw new ArgumentOutOfRangeException(
                Of(i, nameof(run.HeadingDegrees)), run.HeadingDegrees, "Must be a finite number of degrees.");
        if (run.Speed is { } speed && speed.Knots is not (>= 0 and <= 200))
            _ = Reject.Outside(0, 200, "kn", speed.Knots, Of(i, nameof(run.Speed)));
        if (run.RpmScatter is { } n && n is not (>= 0 and <= 5_000))
            _ = Reject.Outside(0, 5_000, "rev/min", n, Of(i, nameof(run.RpmScatter)));
        if (run.SpeedScatterKnots is { } v && v is not (>= 0 and <= 50))
            _ = Reject.Outside(0, 50, "kn", v, Of(i, nameof(run.SpeedScatterKnots)));
        if (run.Held is { TotalHours: < 0 or > 24 } held)
            _ = Reject.Outside(0, 24 * 3600, "s", held.TotalSeconds, Of(i, nameof(run.Held)));
    }

    private static void Check(TrialConditions conditions, string name)
    {
        if (conditions.TrimDegrees is { } trim)
            _ = Reject.Outside(-90, 90, "degrees", trim, $"{name}.{nameof(conditions.TrimDegrees)}");
    }

    private static void Check(EngineData engine)
    {
        if (engine.Gear is { } gear)
            _ = AboveZero(20, "engine turns per prop turn", gear.EnginePerPropTurn, "Engine.Gear");
        if (engine.TachometerStep is { } step)
            _ = Reject.Outside(0, 500, "rev/min", step.RevolutionsPerMinute, "Engine.TachometerStep");
        if (engine.TachometerError is { } error)
            Within(-0.5, 0.5, "(a fraction)", error, "Engine.TachometerError");
        _ = Reject.Outside(0, 1, "(a declared response)", (int)engine.Breathing, "Engine.Breathing");
    }

    private static void Within(double low, double high, string unit, Uncertain given, string name)
    {
        _ = Reject.Outside(low, high, unit, given.Value, name);
        if (given.StandardDeviation is not >= 0 || given.StandardDeviation > high) // so that the name is made only when needed
            _ = Reject.Outside(0, high, unit, given.StandardDeviation, $"{name}.StandardDeviation");
    }

    private static double AboveZero(double high, string unit, double given, string name) => given > 0 && given <= high
        ? given
        : throw new ArgumentOutOfRangeException(
            name, given, string.Create(CultureInfo.InvariantCulture, $"Must be above 0 and up to {high} {unit}."));

    private static string Of(int run, string? field) => field is null ? $"Runs[{run}]" : $"Runs[{run}].{field}";
}
