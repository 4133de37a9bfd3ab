using FleetWake.Statistics;

namespace FleetWake.Benchmarks.Oracle;

/// <summary>Straight lines with one slope and a level for each stretch.</summary>
internal static class LineCases
{
    internal static OracleMethod Lines(Chance chance)
    {
        var method = new OracleMethod("line", "lm, y ~ stretch + x: slope, errors, t limits of the line at a place", 1e-9);
        for (var c = 0; c < 100; c++, method.Cases++)
        {
            var (stretches, x) = (chance.Whole(1, 3), 0.0);
            var points = new List<LinePoint>();
            for (var s = 0; s < stretches; s++)
            {
                var count = chance.Whole(2, 8);
                for (var i = 0; i < Math.Max(count, 3); i++)
                {
                    x += chance.Uniform(0.05, 1);
                    points.Add(new(x, 5500 + (60 * s) + (20 * x) + (35 * chance.Normal()), s));
                }
            }

            var at = x + chance.Uniform(0, 5);
            foreach (var p in points) method.Tell("line", "case,x,y,stretch,at", c, p.X, p.Y, p.Stretch, at);
            var fit = StraightLine.Fit(points, 0.8, 0)!;
            method.Found($"{c}/slope", fit.Slope.Value, fit.Slope.StandardError);
            method.Found($"{c}/slope se", fit.Slope.StandardError);
            method.Found($"{c}/noise", fit.ResidualSd);
            method.Found($"{c}/level", fit.At(at).Value);
            method.Found($"{c}/level se", fit.At(at).StandardError);
            method.Found($"{c}/low", fit.At(at).Low);
            method.Found($"{c}/high", fit.At(at).High);
        }

        return method;
    }
}
