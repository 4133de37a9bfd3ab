using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>
/// The drift estimator where it comes down to ordinary Gaussian regression: one noise, known; all but no gross errors; every
/// drift of the grid as likely, or with a normal prior. Its hours are then any regressor and its RPM any response.
/// </summary>
internal static class KnownNoise
{
    /// <summary>A level that nobody has an opinion of.</summary>
    public const double Open = 1e9;

    public static readonly SlopePrior AnySlope = SlopePrior.Of(Enumerable.Repeat(1.0, SlopeGrid.Count).ToArray());

    public static SlopePrior NormalSlope(double mean, double sd) => SlopePrior.Of(
        [.. Enumerable.Range(0, SlopeGrid.Count).Select(g => Math.Exp(-0.5 * Math.Pow((SlopeGrid.At(g) - mean) / sd, 2)))]);

    /// <summary>Trials (x, y) whose noise has a standard deviation in the unit of y; x counts hundreds of hours.</summary>
    public static DriftSeries Series(double level, IEnumerable<(double X, double Y, double Covariate)> points, params IEnumerable<double> stepsAt) => new(
        level, level, [.. points.Select(p => new DriftTrial(p.X, 100 * p.X, p.Y, 15 + p.Covariate))], [.. stepsAt.Select(x => new DriftEvent(x, StepKind.Repitch))]);

    public static DriftSettings Settings(DriftSeries series, double noise, double levelSd) => DriftSettings.Recommended with
    {
        Noise = NoiseNodes.Of([noise / Median(series)], [1]),
        GrossChance = 1e-200,
        LevelShare = 1,
        LevelSdRpm = levelSd,
    };

    /// <summary>Mean and standard deviation of the drift, without the half step that each place of the grid stands for.</summary>
    public static (double Mean, double Sd) Slope(DriftAssessment found) =>
        (found.RpmPer100Hours.Value, Math.Sqrt(Math.Pow(found.RpmPer100Hours.StandardError, 2) - (1.0 / 12)));

    public static double Median(DriftSeries series)
    {
        var rpm = series.Trials.Select(t => t.Rpm).Order().ToArray();
        return (rpm[(rpm.Length - 1) / 2] + rpm[rpm.Length / 2]) / 2;
    }
}
