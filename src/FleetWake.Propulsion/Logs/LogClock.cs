namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Makes one time that only runs forward out of a log's clock. The order of the lines is trusted more than the clock: where
/// it jumps, the time goes on after a break that is long enough to end every run.
/// </summary>
internal sealed class LogClock
{
    /// <summary>Two devices on one bus may tell their times this much out of order. Common practice, no source.</summary>
    internal static readonly TimeSpan OutOfOrder = TimeSpan.FromSeconds(5);

    /// <summary>What a jump is replaced by.</summary>
    internal static readonly TimeSpan Break = TimeSpan.FromMinutes(2);

    /// <summary>A step ahead that is no pause any more.</summary>
    internal static readonly TimeSpan LongestPause = TimeSpan.FromDays(1);

    private static readonly DateTimeOffset s_latest = new(9000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private DateTimeOffset? _raw;
    private DateTimeOffset _time;

    internal int WentBack { get; private set; }

    internal int JumpedAhead { get; private set; }

    /// <summary>The time of a reading; null when so many days have been logged that no calendar holds them.</summary>
    internal DateTimeOffset? Time(DateTimeOffset raw)
    {
        if (_raw is not { } last)
        {
            (_raw, _time) = (raw, raw);
            return raw;
        }

        var step = raw - last;
        if (step < -OutOfOrder)
        {
            WentBack++;
            step = Break;
        }
        else if (step > LongestPause)
        {
            JumpedAhead++;
            step = Break;
        }

        if (_time > s_latest) return null;
        var time = _time + step;
        if (step >= TimeSpan.Zero) (_raw, _time) = (raw, time);
        return time;
    }
}
