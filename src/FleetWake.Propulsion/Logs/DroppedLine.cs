namespace FleetWake.Propulsion.Logs;

/// <summary>A line of a log that could not be used, or one value of a line.</summary>
/// <param name="Line">Its number from one; for JSON the line on which the object began, for GPX that of the point.</param>
/// <param name="Reason">Why, in words.</param>
public sealed record DroppedLine(int Line, string Reason);
