namespace FleetWake.Statistics;

/// <summary>
/// Where a fitted line reaches a value y, looking forward from a place, with the interval over which the line's
/// confidence band reaches it. All in the unit of X.
/// </summary>
/// <param name="X">Where the line itself reaches y; null when it does not from there on and within the horizon.</param>
/// <param name="LowX">
/// The earliest: where the edge of the band that is nearer to y reaches it; the starting place when the band already
/// holds y there; null when the near edge does not get there within the horizon.
/// </param>
/// <param name="HighX">
/// The latest: where the edge of the band that is farther from y reaches it; null when the far edge does not get there
/// within the horizon, or ever. Null says "later, or never", not "unknown".
/// </param>
/// <remarks>
/// <para>
/// Source: E. C. Fieller, J. R. Statist. Soc. B 16 (1954) 175-185, applied to calibration on a line (cited from
/// memory): the places at which y lies inside the band of the mean response, whose bounds are the roots of
/// (b^2 - t^2 s^2/Sxx) u^2 - 2 b d u + d^2 - t^2 s^2/n = 0 with u = x - mean x and d = y - mean y. Under normal noise
/// those places hold the true crossing with exactly the level's probability, over all fits, significant or not. From
/// LowX to HighX, a null HighX standing for no bound, is the least interval of one piece that holds all of them that
/// lie after the starting place, or a wider one where a case below says so.
/// </para>
/// <para>
/// What is "near" follows from the side of y on which the line stands at the starting place. A line knows no rated
/// band, so whether that side is inside or outside is for the caller to ask first (<see cref="LineFit.At"/>): once the
/// line is past a limit there is nothing left to reach, and HighX goes from a place to null at that point.
/// </para>
/// <list type="bullet">
/// <item>Heading for y, slope significant: LowX, X, HighX in this order, each null if beyond the horizon.</item>
/// <item>Heading for y, slope not significant (its interval holds zero): X as before and LowX, but HighX is null: the
/// line may as well never get there.</item>
/// <item>Heading away or level, slope significant: all null, but LowX is the starting place when the band holds y
/// there, for it may be there already.</item>
/// <item>Heading away or level, slope not significant: X and HighX null; LowX may be set, since the band opens towards
/// y as it goes on.</item>
/// <item>Already past: the line got to y before the starting place and is heading away from it, which is the case
/// before. LowX equal to the starting place says that the band has not left y yet.</item>
/// <item>On y at the starting place: X and LowX are that place, HighX as the slope allows, looked at from the side the
/// line comes from.</item>
/// <item>A band that never reaches y: LowX and HighX null. Without doubt (standard deviation zero) all three agree.</item>
/// </list>
/// </remarks>
public sealed record Crossing(double? X, double? LowX, double? HighX);
