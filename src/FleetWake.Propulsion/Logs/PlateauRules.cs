namespace FleetWake.Propulsion.Logs;

/// <summary>
/// When a stretch of a log counts as a run. Common practice, no source: chosen so that a tachometer that flickers by one step
/// of 50 rev/min, a receiver that scatters by a third of a knot, and helm corrections of ten degrees do not end a run, while a
/// turn or a touch of the throttle does.
/// </summary>
public sealed record PlateauRules
{
    /// <summary>The rules as stated.</summary>
    public static PlateauRules Usual { get; } = new();

    /// <summary>Shortest run; above zero. A planing boat's speed settles in about ten seconds.</summary>
    public TimeSpan Shortest { get; init; } = TimeSpan.FromSeconds(15);

    /// <summary>Widest range of RPM within a run, over its highest [1], 0 to 1.</summary>
    public double RpmRange { get; init; } = 0.03;

    /// <summary>Widest range of speed within a run, over its highest [1], 0 to 1; <see cref="SpeedRangeFloorKnots"/> where that is wider.</summary>
    public double SpeedRange { get; init; } = 0.08;

    /// <summary>Range of speed that ends no run however slow it is [kn], zero or more.</summary>
    public double SpeedRangeFloorKnots { get; init; } = 1;

    /// <summary>Widest range of the course within a run [degrees], 0 to 180.</summary>
    public double CourseRangeDegrees { get; init; } = 30;

    /// <summary>How far below the highest run's RPM one may be and still be wide open [1]: wind and current move it, 0 to 1.</summary>
    public double WideOpenRpm { get; init; } = 0.04;

    /// <summary>
    /// The same by speed, for logs without RPM [1], 0 to 1. Wider, for a current counts twice between a run with it and one
    /// against it.
    /// </summary>
    public double WideOpenSpeed { get; init; } = 0.25;

    /// <summary>Refuses rules that are none.</summary>
    internal void Check()
    {
        if (Shortest <= TimeSpan.Zero)
            throw new ArgumentOutOfRangeException(nameof(Shortest), Shortest, "Must be above zero.");
        Within(RpmRange, 1, nameof(RpmRange));
        Within(SpeedRange, 1, nameof(SpeedRange));
        Within(SpeedRangeFloorKnots, double.MaxValue, nameof(SpeedRangeFloorKnots));
        Within(CourseRangeDegrees, 180, nameof(CourseRangeDegrees));
        Within(WideOpenRpm, 1, nameof(WideOpenRpm));
        Within(WideOpenSpeed, 1, nameof(WideOpenSpeed));
    }

    private static void Within(double value, double high, string name)
    {
        if (!(value >= 0 && value <= high))
            throw new ArgumentOutOfRangeException(name, value, $"Must be from 0 to {high}.");
    }
}
