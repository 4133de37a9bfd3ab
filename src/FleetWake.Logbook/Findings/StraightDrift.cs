using FleetWake.Statistics;

namespace FleetWake.Logbook.Findings;

/// <summary>A straight-line drift over the usable trials of a mounting: one slope, a level of its own for each stretch between new baselines.</summary>
/// <param name="Fit">The fitted line, engine hours [h] against RPM.</param>
/// <param name="LastTrialHours">Engine hours of the last usable trial [h].</param>
/// <param name="FirstHours">Engine hours of the first usable trial of the last stretch [h].</param>
/// <param name="GaugeFloor">Standard deviation that the gauge's step alone gives a reading [RPM].</param>
internal sealed record StraightDrift(LineFit Fit, double LastTrialHours, double FirstHours, double GaugeFloor)
{
    /// <summary>Level of every interval that a finding states.</summary>
    public const double Level = 0.8;

    /// <summary>Usable trials below which nothing is said of drift.</summary>
    public const int FewestTrials = 3;

    /// <summary>Step assumed for a tachometer nobody described [RPM]. Common practice, no source: needle gauges are ruled in 50s or 100s.</summary>
    public const double UnknownTachometerStepRpm = 50;

    /// <summary>Trials whose hours differ by less than this are at the same hours [h]: meters show whole hours, and bridged ones any fraction.</summary>
    public const double LeastSpreadHours = 1;

    private const double HoursOfDriftUnit = 100;

    /// <summary>Drift [RPM per 100 engine hours].</summary>
    public Estimate DriftPer100Hours { get; } = new(
        Fit.Slope.Value * HoursOfDriftUnit,
        Fit.Slope.StandardError * HoursOfDriftUnit,
        Fit.Slope.Low * HoursOfDriftUnit,
        Fit.Slope.High * HoursOfDriftUnit,
        Fit.Slope.Level);

    /// <summary>The least drift that would stand out if trials scattered no more than the gauge's step makes them [RPM per 100 engine hours].</summary>
    public double LeastShown { get; } = Fit.LevelQuantile * Fit.Slope.StandardError * (GaugeFloor / Fit.ResidualSd) * HoursOfDriftUnit;

    /// <summary>Whether the interval of the drift leaves out zero.</summary>
    public bool StandsOut() => DriftPer100Hours.Low > 0 || DriftPer100Hours.High < 0;

    /// <summary>The drift of a mounting's trials; null when there are too few, or all at the same hours.</summary>
    public static StraightDrift? Of(IReadOnlyList<TrialFinding> trials, bool atReference, double? tachometerStepRpm)
    {
        var usable = trials.Where(t => t is { SetAside: null, Hours: not null }).ToList();
        if (usable.Count < FewestTrials) return null;
        if (!usable.GroupBy(t => t.Stretch).Any(s => s.Max(t => t.Hours) - s.Min(t => t.Hours) >= LeastSpreadHours)) return null;

        // A gauge cannot show less scatter than its step: exact agreement of a few readings is no exactness.
        var floor = GaugeStep.StandardUncertainty(tachometerStepRpm ?? UnknownTachometerStepRpm);
        var fit = StraightLine.Fit([.. usable.Select(t => new LinePoint(t.Hours!.Value, t.LineRpm(atReference), t.Stretch))], Level, floor);
        if (fit is null) return null;
        var last = usable.Where(t => t.Stretch == fit.LastStretch).Select(t => t.Hours!.Value).ToList();
        return new StraightDrift(fit, last.Max(), last.Min(), floor);
    }
}
