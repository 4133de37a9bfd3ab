namespace FleetWake.Statistics;

/// <summary>
/// The band Level + Slope u +/- sqrt(h0^2 + (k u)^2) about a line, u = x - Centre. The two terms under the root are
/// independent, since the level is taken at the centre.
/// </summary>
/// <param name="Centre">Mean x of the stretch.</param>
/// <param name="Level">Mean y of the stretch.</param>
/// <param name="Slope">Slope b.</param>
/// <param name="AtCentre">Half-width h0 at the centre, t s / sqrt(n).</param>
/// <param name="PerX">Half-width k of the slope's interval, t s / sqrt(Sxx).</param>
internal readonly record struct ConfidenceBand(double Centre, double Level, double Slope, double AtCentre, double PerX)
{
    /// <summary>The meaning of each result is told at <see cref="Statistics.Crossing"/>.</summary>
    internal Crossing Crossing(double y, double fromX, double horizonX)
    {
        var u0 = fromX - Centre;
        var toGo = y - Level - (Slope * u0); // from the line at the start up to y
        var side = toGo != 0 ? Math.Sign(toGo) : Slope < 0 ? -1 : 1;

        // Seen from the side on which the line stands: the distance to y is delta - beta u, and beta > 0 closes it.
        var delta = side * (y - Level);
        var beta = side * Slope;
        var z0 = Math.Abs(toGo);
        var h = Math.Sqrt((AtCentre * AtCentre) + (PerX * u0 * PerX * u0)); // half-width at the start

        // Near edge: delta - beta u = half-width. Far edge: delta - beta u = -half-width. Squared, both are
        // A u^2 - 2 beta delta u + C = 0. Each root is taken by the form that does not subtract like numbers.
        var A = (beta - PerX) * (beta + PerX); // above zero when the slope is significant
        var C = (delta - AtCentre) * (delta + AtCentre);
        var half = beta * delta;
        var root = Math.Sqrt(Math.Max(0, (AtCentre * AtCentre * A) + (PerX * PerX * delta * delta)));
        var near = half >= 0 ? C / (half + root) : (half - root) / A;
        var far = half >= 0 ? (half + root) / A : C / (half - root);

        // z0 > h: the near edge is a concave function of x, above zero at the start, so it comes down once if its
        // slope far out is downward (A < 0, or beta > 0) and never else. The far edge is convex; with A > 0 and
        // beta > 0 it comes down once. With A <= 0 it may dip and rise again, but only when the search starts before
        // the centre of the readings and the line gets to y there: a dip bounds nothing, so it counts as never.
        double? line = z0 == 0 ? u0 : beta > 0 ? delta / beta : null;
        double? low = z0 <= h ? u0 : A < 0 || beta > 0 ? near : null;
        double? high = z0 + h == 0 ? u0 : A > 0 && beta > 0 ? far : null;

        var x = Place(line, fromX);
        var lowX = z0 <= h ? fromX : Place(low, fromX);
        var highX = Place(high, fromX);
        if (x is { } crossing)
        {
            lowX = lowX < crossing ? lowX : crossing; // in order, whatever the last bit says
            highX = highX > crossing ? highX : highX is null ? null : crossing;
        }

        return new Crossing(Within(x, horizonX), Within(lowX, horizonX), Within(highX, horizonX));
    }

    private double? Place(double? u, double fromX) => u is { } found ? Math.Max(fromX, Centre + found) : null;

    private static double? Within(double? x, double horizonX) => x <= horizonX ? x : null;
}
