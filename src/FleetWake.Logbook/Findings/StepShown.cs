using FleetWake.Statistics;

namespace FleetWake.Logbook.Findings;

/// <summary>
/// What happened between two trials and what it did to the RPM: the level after against the level before, drift taken off.
/// (Before against after, as the maintenance effect of ISO 19030-1:2016; the arithmetic is the estimator's own.)
/// </summary>
/// <param name="What">What happened, in words; all between the same two trials together, for only their sum can be seen.</param>
/// <param name="On">Dock's date of the first of it.</param>
/// <param name="Rpm">What it did [RPM] with its interval, what such an event usually does counted in: above 0 the engine turned faster after it.</param>
public sealed record StepShown(IReadOnlyList<string> What, DateOnly On, Estimate Rpm)
{
    /// <summary>A step with less evidence than this of its own is what was expected beforehand and nothing seen [nat]; judgement.</summary>
    private const double LeastEvidence = 0.05;

    /// <summary>
    /// The trials alone, without what such an event usually does, leave no doubt (80 %) which way it went. Else nobody may say that
    /// it cost or gave anything.
    /// </summary>
    public bool ShownByTrials { get; init; }

    /// <summary>The steps that trials tell of.</summary>
    internal static IReadOnlyList<StepShown> Of(WearDrift? drift) => drift is null
        ? []
        : [
            .. drift.Found.Steps.Where(s => s.OwnEvidenceNats >= LeastEvidence).Select(s =>
            {
                var what = s.Events.Select(e => drift.Series.Steps[e]).ToList();
                return new StepShown([.. what.Select(w => w.Label)], what[0].Entry.Date(), s.Rpm) { ShownByTrials = s.ShownByTrials };
            }),
        ];
}
