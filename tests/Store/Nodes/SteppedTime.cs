namespace FleetWake.Store.Tests.Nodes;

/// <summary>A clock that goes on when it is told to.</summary>
internal sealed class SteppedTime : TimeProvider
{
    private long seconds;

    public override long TimestampFrequency => 1;

    public override long GetTimestamp() => seconds;

    public void Step(long by) => seconds += by;
}
