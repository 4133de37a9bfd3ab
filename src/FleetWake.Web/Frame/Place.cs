namespace FleetWake.Web.Frame;

/// <summary>A place that the line of places leads to.</summary>
/// <param name="Path">Its address.</param>
/// <param name="Text">Key of its words.</param>
public sealed record Place(string Path, string Text);
