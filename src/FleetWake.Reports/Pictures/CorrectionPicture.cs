using FleetWake.Propulsion.Trials;

namespace FleetWake.Reports.Pictures;

/// <summary>How a trial comes from what the helm read to what it would have read at reference air.</summary>
/// <param name="Statement">What the picture shows, in a sentence; its alternative text.</param>
/// <param name="Steps">From the runs to the reference, in order.</param>
/// <param name="Band">The rated band, when known.</param>
public sealed record CorrectionPicture(string Statement, IReadOnlyList<CorrectionStep> Steps, RatedBand? Band)
    : Picture("From the reading to reference air", Statement)
{
    private const double Deviations = 1.2816; // of an 80 % interval

    /// <summary>The picture of a trial.</summary>
    /// <param name="reading">The trial as read.</param>
    /// <param name="trial">What it comes to.</param>
    public static CorrectionPicture Of(TrialReading reading, CorrectedTrial trial)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(trial);
        var limited = reading.Runs.Any(r => r.LimiterReached);
        List<CorrectionStep> steps =
        [
            .. reading.Runs.Select((r, i) => new CorrectionStep($"run {i + 1}, {r.HeadingDegrees:0}\u00B0", r.Engine.RevolutionsPerMinute, null, r.LimiterReached)),
            new CorrectionStep("as read", trial.Rpm.Value, Deviations * trial.Rpm.StandardDeviation, limited),
            new CorrectionStep(trial.Correction is null ? "not corrected" : "reference air", trial.CorrectedRpm.Value, Deviations * trial.CorrectedRpm.StandardDeviation, limited),
        ];
        var band = reading.Engine is { BandLow: { } low, BandHigh: { } high } ? new RatedBand(low.RevolutionsPerMinute, high.RevolutionsPerMinute) : null;
        var brought = trial.Correction is { } c
            ? $"{trial.CorrectedRpm.Value:0} RPM at reference air ({trial.CorrectedRpm.Low(Deviations):0} to {trial.CorrectedRpm.High(Deviations):0} at 80\u00A0%), power factor {c.Factor.Value:0.000}"
            : "not corrected for air";
        var place = band is { } b ? $"; rated band {b.LowRpm:0} to {b.HighRpm:0}" : "";
        return new CorrectionPicture($"Read {trial.Rpm.Value:0} RPM over {Phrases.Count(reading.Runs.Count, "run")}; {brought}{place}.", steps, band);
    }
}

/// <summary>One row of the picture.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Rpm">Engine speed [RPM].</param>
/// <param name="Half">Half the 80 % interval [RPM]; null where a single reading stands.</param>
/// <param name="AtLeast">The limiter held it: a lower bound.</param>
public sealed record CorrectionStep(string Label, double Rpm, double? Half, bool AtLeast);
