using FleetWake.Statistics;
using FleetWake.Statistics.Drift;

namespace FleetWake.Logbook.Findings;

/// <summary>The drift of a mounting's trials with what its fleet makes likely.</summary>
/// <param name="Found">What the estimator says.</param>
/// <param name="Series">What it was told.</param>
/// <param name="Settings">What it took for granted.</param>
/// <param name="LastTrialHours">Engine hours of the last usable trial [h].</param>
/// <param name="FirstHours">Engine hours of the first usable trial of that trial's stretch [h].</param>
/// <param name="LastStretch">That stretch.</param>
internal sealed record WearDrift(
    DriftAssessment Found, MountingSeries Series, DriftSettings Settings, double LastTrialHours, double FirstHours, int LastStretch)
{
    /// <summary>Level of every interval that a finding states.</summary>
    public const double Level = 0.8;

    /// <summary>Drift [RPM per 100 engine hours].</summary>
    public Estimate DriftPer100Hours => Found.RpmPer100Hours;

    /// <summary>The drift; null without a usable trial.</summary>
    public static WearDrift? Of(IReadOnlyList<TrialFinding> trials, MountingSeries series, SlopePrior prior, DriftSettings settings)
    {
        var usable = trials.Where(MountingSeries.Usable).ToList();
        if (usable.Count == 0) return null;
        var stretch = usable[^1].Stretch;
        var last = usable.Where(t => t.Stretch == stretch).Select(t => t.Hours!.Value).ToList();
        return new(DriftEstimator.Assess(series.Series, prior, settings), series, settings, usable.Max(t => t.Hours!.Value), last.Min(), stretch);
    }

    /// <summary>RPM at some hours of the meter [1/min], between the first trial of the last stretch and any time to come.</summary>
    public Estimate At(double hours) => Found.LevelAt(hours - LastTrialHours)!;
}
