namespace FleetWake.Web.Frame;

/// <summary>A place that the line of places leads to.</summary>
/// <param name="Path">Its address.</param>
/// <param name="Text">Key of its words.</param>
public sealed record Place(string Path, string Text)
{
    /// <summary>How many wait there for somebody; 0 shows nothing.</summary>
    public int Waiting { get; init; }
}
