namespace FleetWake.Store.Nodes;

/// <summary>How long something has come without a gap, by a clock that does not jump when the time of day is set.</summary>
/// <param name="time">The clock.</param>
/// <param name="longestGap">A longer wait between two is a gap.</param>
public sealed class Regularity(TimeProvider time, TimeSpan longestGap)
{
    private long first;
    private long? last;

    /// <summary>How long it has come without a gap; zero before the second time.</summary>
    public TimeSpan For => last is { } newest ? time.GetElapsedTime(first, newest) : TimeSpan.Zero;

    /// <summary>Notes that it came; the length of the gap when there was one.</summary>
    public TimeSpan? Beat()
    {
        var now = time.GetTimestamp();
        var waited = last is { } before ? time.GetElapsedTime(before, now) : (TimeSpan?)null;
        last = now;
        if (waited is { } regular && regular <= longestGap) return null;
        first = now;
        return waited;
    }
}
