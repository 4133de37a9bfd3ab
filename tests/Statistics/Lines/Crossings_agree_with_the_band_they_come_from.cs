using CsCheck;

namespace FleetWake.Statistics.Tests.Lines;

/// <summary>
/// The band as <see cref="LineFit.At"/> gives it, walked in small steps, is the judge of the quadratic: no formula in
/// common.
/// </summary>
public class Crossings_agree_with_the_band_they_come_from
{
    private const int Steps = 4000;

    /// <summary>How far the value lies from the line at the start; on the line itself has an example of its own.</summary>
    private static readonly Gen<double> s_toGo =
        Gen.Select(Gen.Double[0.01, 60], Gen.Bool, (distance, isAbove) => isAbove ? distance : -distance);

    private static readonly Gen<(LineFit Fit, double Y, double From, double Horizon)> s_searches = Gen.Select(
        Line.Scattered.Where(Line.CarriesALine), s_toGo, Gen.Double[0, 200], Gen.Double[50, 800]).Select(
        (points, above, from, ahead) =>
        {
            var fit = Line.Fitted(points, noiseFloor: 0.5);
            return (fit, fit.At(from).Value + above, from, from + ahead);
        });

    [Fact]
    public void The_near_edge_is_on_the_value_at_LowX_and_the_far_edge_at_HighX() => s_searches.Sample(search =>
    {
        var (fit, y, from, horizon) = search;
        var crossing = fit.Crossing(y, from, horizon);
        var isBelow = fit.At(from).Value < y;
        if (crossing.X is { } x)
            Close(y, fit.At(x).Value);
        if (crossing.LowX is { } low && low > from)
            Close(y, isBelow ? fit.At(low).High : fit.At(low).Low);
        if (crossing.HighX is { } high)
            Close(y, isBelow ? fit.At(high).Low : fit.At(high).High);
    });

    [Fact]
    public void Each_is_the_first_place_where_that_edge_gets_there() => s_searches.Sample(search =>
    {
        var (fit, y, from, horizon) = search;
        var crossing = fit.Crossing(y, from, horizon);
        var side = fit.At(from).Value < y ? 1 : -1;
        double Near(double x) => side > 0 ? y - fit.At(x).High : fit.At(x).Low - y;
        double Far(double x) => side > 0 ? y - fit.At(x).Low : fit.At(x).High - y;
        var step = (horizon - from) / Steps;

        Walked(crossing.LowX, First(Near, from, step), horizon, step);
        Walked(crossing.X, First(x => side * (y - fit.At(x).Value), from, step), horizon, step);
        if (crossing.HighX is not null || IsSignificant(fit))
            Walked(crossing.HighX, First(Far, from, step), horizon, step);
    }, iter: 300);

    [Fact]
    public void Earliest_line_and_latest_come_in_this_order() => s_searches.Sample(search =>
    {
        var (fit, y, from, horizon) = search;
        var (x, low, high) = fit.Crossing(y, from, horizon);
        Assert.True(x is null || (low is not null && from <= low && low <= x && x <= horizon));
        Assert.True(high is null || (x is not null && x <= high && high <= horizon));
        Assert.True(high is null || IsSignificant(fit));
    });

    [Fact]
    public void The_readings_shifted_and_scaled_cross_at_the_places_shifted_and_scaled() => Gen.Select(
        Line.Scattered.Where(Line.CarriesALine), Gen.Double[0.1, 10], Gen.Double[-100, 100], Gen.Bool, s_toGo)
        .Sample((points, scale, shift, isMirrored, above) =>
        {
            var turn = isMirrored ? -scale : scale; // of y
            var plain = Line.Fitted(points, noiseFloor: 0.5);
            var moved = Line.Fitted(
                [.. points.Select(p => new LinePoint((p.X * scale) + shift, (p.Y * turn) + shift, p.Stretch))],
                noiseFloor: 0.5 * scale);
            Line.Close(Math.Sign(turn) * plain.Slope.Value, moved.Slope.Value, 1e-8, scale: 1);
            Line.Close(plain.Slope.StandardError, moved.Slope.StandardError, 1e-8, scale: 0.01);

            var y = plain.At(100).Value + above;
            var here = plain.Crossing(y, 100, 600);
            var there = moved.Crossing((y * turn) + shift, (100 * scale) + shift, (600 * scale) + shift);
            Same(here.LowX, there.LowX);
            Same(here.X, there.X);
            Same(here.HighX, there.HighX);

            void Same(double? one, double? other)
            {
                if (one is { } a && other is { } b)
                    Assert.Equal((a * scale) + shift, b, 1e-5 * scale);
                else // one of them may fall to either side of the horizon by a bit
                    Assert.True((one ?? 600) > 599.99 && (other ?? double.MaxValue) > (599.99 * scale) + shift);
            }
        });

    private static bool IsSignificant(LineFit fit) => fit.Slope.Low > 0 || fit.Slope.High < 0;

    private static void Close(double y, double edge) => Assert.Equal(y, edge, 1e-6);

    private static double? First(Func<double, double> toGo, double from, double step)
    {
        for (var i = 0; i <= Steps; i++)
        {
            if (toGo(from + (i * step)) <= 0)
                return from + (i * step);
        }

        return null;
    }

    private static void Walked(double? claimed, double? walked, double horizon, double step)
    {
        if (claimed is { } c && walked is { } w)
            Assert.InRange(c, w - (1.01 * step), w + (0.01 * step));
        else
            Assert.True((claimed ?? walked ?? horizon) >= horizon - (1.01 * step), $"{claimed} against {walked}");
    }
}
