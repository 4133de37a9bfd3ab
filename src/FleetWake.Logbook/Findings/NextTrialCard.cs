using FleetWake.Logbook.Engines;
using FleetWake.Statistics;
using FleetWake.Statistics.Drift;

namespace FleetWake.Logbook.Findings;

/// <summary>What one more trial would decide, run at the hours that the meter shows now.</summary>
/// <param name="ChangesDecisionChance">Chance that it turns "act before the next 100 engine hours" into "wait", or the other way round [1].</param>
/// <param name="DoubtRemovedShare">Share of the drift's variance that it is expected to take away [1].</param>
/// <param name="LeastDriftShown">The smallest steady drift that would stand out on this gauge with one more trial a quarter of a year from the last reading [RPM per 100 engine hours]; null when none would.</param>
public sealed record NextTrialCard(double ChangesDecisionChance, double DoubtRemovedShare, double? LeastDriftShown)
{
    /// <summary>One acts when the chance of leaving the band within these engine hours [h] ...</summary>
    public const double ActWithinHours = 100;

    /// <summary>... reaches this [1]. Both are judgement: a look that was not needed costs an hour, an engine that ran out of its band costs more.</summary>
    public const double ActAtChance = 0.3;

    private const int SeasonDays = 90;

    /// <summary>What a trial would decide; null without a usable trial or a band.</summary>
    /// <param name="drift">The drift.</param>
    /// <param name="engine">The engine.</param>
    /// <param name="use">How much it runs, and what its meter shows.</param>
    internal static NextTrialCard? Of(WearDrift? drift, EngineCard? engine, MeterUse use)
    {
        if (drift is null || engine is not { BandLowRpm: not null, BandHighRpm: not null }) return null;
        var gauge = GaugeStep.StandardUncertainty(engine.TachometerStepRpm ?? TachometerSteps.UnknownRpm);
        var run = use.HoursSince(drift);
        var season = use.ReadOn is { } day ? use.Posterior.MeanHours(day, day.AddDays(SeasonDays)) : 0;
        var value = NextTrial.Of(
            drift.Found, drift.Settings, drift.Series.Series, new(run, ActWithinHours, ActAtChance, gauge) { ShownHoursAhead = run + season });
        return new(value.ChangesDecisionChance, value.DoubtRemovedShare, value.LeastDriftShown);
    }
}
