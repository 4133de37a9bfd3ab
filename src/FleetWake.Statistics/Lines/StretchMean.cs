namespace FleetWake.Statistics;

/// <summary>The middle of one stretch: its number of points and their mean place.</summary>
internal readonly record struct StretchMean(int Count, double X, double Y);
