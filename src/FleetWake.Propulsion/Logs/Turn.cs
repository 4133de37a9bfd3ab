namespace FleetWake.Propulsion.Logs;

/// <summary>Arithmetic of angles on a compass.</summary>
internal static class Turn
{
    private static readonly string[] s_points = ["N", "NE", "E", "SE", "S", "SW", "W", "NW"];

    /// <summary>The same direction as 0 up to 360 degrees.</summary>
    internal static double Of(double degrees)
    {
        var turn = degrees % 360;
        if (turn < 0) turn += 360;
        return turn >= 360 ? 0 : turn; // a tiny negative angle rounds up to 360
    }

    /// <summary>The degrees of a point of the compass, N, NE, E, SE, S, SW, W or NW; null when the text is none.</summary>
    internal static double? Point(string text)
    {
        var point = Array.IndexOf(s_points, text.Trim().ToUpperInvariant());
        return point < 0 ? null : 45 * point;
    }

    /// <summary>From one direction to another the shorter way [degrees], -180 to 180, positive to starboard.</summary>
    internal static double Between(double from, double to) => Math.IEEERemainder(to - from, 360);

    /// <summary>The angle between two directions [degrees], 0 to 180.</summary>
    internal static double Apart(double a, double b) => Math.Abs(Between(a, b));

    /// <summary>The mean direction by unit vectors [degrees]; the plain mean of 359 and 1 would point astern.</summary>
    internal static double Mean(IReadOnlyCollection<double> degrees)
    {
        var (x, y) = (0.0, 0.0);
        foreach (var d in degrees)
        {
            var (sin, cos) = Math.SinCos(d * Math.PI / 180);
            (x, y) = (x + cos, y + sin);
        }

        return Of(Math.Atan2(y, x) * 180 / Math.PI);
    }
}
