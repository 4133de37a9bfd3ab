namespace FleetWake.Propulsion;

/// <summary>The one speed that a set of timed runs comes to, and how far to trust it.</summary>
/// <param name="Speed">The mean speed: through the water when the method removes the current, else over ground.</param>
/// <param name="Method">How it was made.</param>
/// <param name="LargestHeadingErrorDegrees">
/// The largest departure from exact opposition [degrees], 0 to 180: over every pair of a run out and a run back, or,
/// when all runs went one way, over runs made after each other. Null for a single run.
/// </param>
/// <param name="StandardErrorKnots">
/// Standard error of <paramref name="Speed"/> [kn] from the scatter of runs about their own heading's mean. It takes a
/// changing current for scatter, which errs to too large. Null when no heading was run twice, or when no current is
/// removed (then the doubt is the current, which the runs cannot tell). With three runs it rests on one degree of
/// freedom, with n runs on n - 2.
/// </param>
public sealed record MeanSpeed(
    Speed Speed, MeanSpeedMethod Method, double? LargestHeadingErrorDegrees, double? StandardErrorKnots);
