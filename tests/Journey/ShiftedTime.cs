namespace FleetWake.Tests.Program;

/// <summary>A clock that shows another time than this machine's, and that can be set while the program runs; waits take as long as ever.</summary>
internal sealed class ShiftedTime : TimeProvider
{
    private TimeSpan ahead;

    /// <summary>A clock that shows a time now and goes on from there.</summary>
    public static ShiftedTime From(DateTimeOffset now)
    {
        var time = new ShiftedTime();
        time.Set(now);
        return time;
    }

    public override DateTimeOffset GetUtcNow() => System.GetUtcNow() + ahead;

    /// <summary>Sets the clock.</summary>
    public void Set(DateTimeOffset to) => ahead = to - System.GetUtcNow();

    /// <summary>Moves the clock.</summary>
    public void Move(TimeSpan by) => ahead += by;
}
