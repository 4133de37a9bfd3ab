namespace FleetWake.Propulsion.Logs;

/// <summary>
/// The way between two points of a track, on the ellipsoid WGS 84 (NIMA TR8350.2, 3rd edition 2000: a = 6 378 137 m,
/// 1/f = 298.257 223 563) by its radii of curvature at the middle latitude. A sphere would err by up to 0.56 % with
/// latitude and heading, as much as a worn prop costs; this errs by less than 1e-5 over 10 km up to 80 degrees of latitude
/// (the first term that is left out, (d tan(phi) / a)^2 / 24, worked by hand).
/// </summary>
internal static class NearbyPoints
{
    private const double A = 6_378_137.0;       // [m]
    private const double F = 1 / 298.257223563; // [1]
    private const double E2 = F * (2 - F);      // [1]

    /// <summary>Distance [m] and course [degrees] from one point to another; latitudes and longitudes in degrees.</summary>
    internal static (double Metres, double CourseDegrees) Between(double lat1, double lon1, double lat2, double lon2)
    {
        var phi = (lat1 + lat2) / 2 * Math.PI / 180; // [rad]
        var (sin, cos) = Math.SinCos(phi);
        var w2 = 1 - (E2 * sin * sin);                          // [1]
        var N = A / Math.Sqrt(w2);                              // [m] prime vertical
        var M = N * (1 - E2) / w2;                              // [m] meridian
        var north = M * (lat2 - lat1) * Math.PI / 180;          // [m]
        var east = N * cos * Turn.Between(lon1, lon2) * Math.PI / 180; // [m], across the date line too
        return (Math.Sqrt((north * north) + (east * east)), Turn.Of(Math.Atan2(east, north) * 180 / Math.PI));
    }
}
