using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>
/// With a known noise and open priors the drift is a least-squares slope: NIST StRD, certified (see Reference). Responses are
/// scaled, and a known line or parabola is taken off, so that the slope and its doubt fall on the grid of drifts; the same is
/// done to the certified values.
/// </summary>
public class Where_drift_is_a_regression
{
    private const double Base = 1e5; // an RPM is never negative

    private static readonly Dictionary<(string, string), (double Value, string Sd)> s_certified =
        ReferenceTable.Rows("strd_norris_certified.csv").Concat(ReferenceTable.Rows("strd_other_certified.csv"))
            .ToDictionary(row => (row[0], row[1]), row => (ReferenceTable.Number(row[2]), row[3]));

    [Fact]
    public void Norris_has_the_certified_slope_its_error_and_the_certified_line()
    {
        const double k = 1e4;
        var points = Points("strd_norris.csv");
        var series = KnownNoise.Series(Base, points.Select(p => (p.X, Base + (k * (p.Y - p.X)), 0.0)));

        var found = DriftEstimator.Assess(series, KnownNoise.AnySlope, KnownNoise.Settings(series, k * Value("Norris", "RESIDUAL_SD"), KnownNoise.Open));

        var (b0, b1, last) = (Value("Norris", "B0"), Value("Norris", "B1"), points.Max(p => p.X));
        var (slope, sd) = KnownNoise.Slope(found);
        Close(b1, 1 + (slope / k), 1e-12);
        Close(Sd("Norris", "B1"), sd / k, 1e-9);
        Close(b0 + (b1 * last), last + ((found.LevelRpm!.Value - Base) / k), 1e-11);
    }

    /// <summary>
    /// No level: it is known to be nothing at x = 0. x runs backwards to a last reading there, which a step of any size frees
    /// of all meaning.
    /// </summary>
    [Theory]
    [InlineData("NoInt1", 2, 300)]
    [InlineData("NoInt2", 0, 30)]
    public void A_line_through_nothing_has_the_certified_slope_and_error(string set, double known, double k)
    {
        var points = Points($"strd_{set.ToLowerInvariant()}.csv").Select(p => (100 - p.X, Base - (k * (p.Y - (known * p.X))), 0.0));
        var series = KnownNoise.Series(Base, points.Append((100, Base, 0)), 99);

        var settings = KnownNoise.Settings(series, k * Value(set, "RESIDUAL_SD"), 1e-5) with { RepitchSdRpm = 1e6 };
        var (slope, sd) = KnownNoise.Slope(DriftEstimator.Assess(series, KnownNoise.AnySlope, settings));

        Close(Value(set, "B1"), known + (slope / k), 1e-11);
        Close(Sd(set, "B1"), sd / k, 1e-9);
    }

    /// <summary>Wear that speeds up is a parabola; the drift is its slope at the last trial, B1 + 2 B2 x.</summary>
    [Fact]
    public void Pontius_has_the_certified_slope_and_level_at_its_end()
    {
        var points = Points("strd_pontius.csv").Select(p => (X: p.X / 1e5, p.Y)).ToArray(); // 1.5 to 30
        var (b0, b1, b2) = (Value("Pontius", "B0"), Value("Pontius", "B1") * 1e5, Value("Pontius", "B2") * 1e10);
        const double k = 1e5, line = 0.07315, parabola = -3.16e-5;
        double Off(double x, double y) => Base + (k * (y - (line * x) - (parabola * x * x)));
        var series = KnownNoise.Series(Base, points.Select(p => (p.X, Off(p.X, p.Y), 0.0)));

        var settings = KnownNoise.Settings(series, k * Value("Pontius", "RESIDUAL_SD"), KnownNoise.Open) with { WearChangeSd = 1e7 };
        var found = DriftEstimator.Assess(series, KnownNoise.AnySlope, settings);

        var last = points.Max(p => p.X);
        Close(b1 + (2 * b2 * last), line + (2 * parabola * last) + (found.RpmPer100Hours.Value / k), 1e-10);
        Close(Off(last, b0 + (b1 * last) + (b2 * last * last)) - Base, found.LevelRpm!.Value - Base, 1e-6);
    }

    private static (double X, double Y)[] Points(string file) =>
        [.. ReferenceTable.Rows(file).Select(row => (ReferenceTable.Number(row[1]), ReferenceTable.Number(row[0])))];

    private static double Value(string set, string parameter) => s_certified[(set, parameter)].Value;

    private static double Sd(string set, string parameter) => ReferenceTable.Number(s_certified[(set, parameter)].Sd);

    private static void Close(double expected, double actual, double relative) => Assert.Equal(expected, actual, relative * Math.Abs(expected));
}
