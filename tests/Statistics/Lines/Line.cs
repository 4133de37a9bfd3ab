using CsCheck;

namespace FleetWake.Statistics.Tests.Lines;

/// <summary>Points and fits that several specifications share.</summary>
internal static class Line
{
    /// <summary>Five points exactly on 100 + 10 x at x = 0..4: n 5, mean x 2, mean y 120, Sxx 10, nu 3.</summary>
    internal static LinePoint[] Exact { get; } = [.. Enumerable.Range(0, 5).Select(x => new LinePoint(x, 100 + (10 * x), 0))];

    /// <summary>Two or three stretches of one to six scattered points each, in no order.</summary>
    internal static Gen<LinePoint[]> Scattered { get; } =
        from counts in Gen.Int[1, 6].Array[2, 3]
        from xs in Gen.Double[0, 100].Array[counts.Sum()]
        from ys in Gen.Double[-10, 10].Array[counts.Sum()]
        let stretches = counts.SelectMany((count, stretch) => Enumerable.Repeat(stretch, count)).ToArray()
        select (LinePoint[])[.. stretches.Select((s, i) => new LinePoint(xs[i], 5000 + (100 * s) + (xs[i] / 5) + ys[i], s))];

    internal static LineFit Fitted(IReadOnlyList<LinePoint> points, double level = 0.8, double noiseFloor = 0) =>
        StraightLine.Fit(points, level, noiseFloor) ?? throw new InvalidOperationException("These points carry a line.");

    /// <summary>Points worth a fit: some room in x, so that no test stands on rounding.</summary>
    internal static bool CarriesALine(LinePoint[] points) =>
        points.GroupBy(p => p.Stretch).Any(g => g.Max(p => p.X) - g.Min(p => p.X) > 1)
        && points.Length > points.Select(p => p.Stretch).Distinct().Count() + 1;

    internal static void Close(double expected, double actual, double relative, double scale = 0) => Assert.Equal(
        expected, actual, relative * Math.Max(Math.Max(Math.Abs(expected), scale), double.Epsilon));
}
