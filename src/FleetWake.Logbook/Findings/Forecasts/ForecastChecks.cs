using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Mountings;
using FleetWake.Statistics;
using FleetWake.Statistics.Drift;

namespace FleetWake.Logbook.Findings.Forecasts;

/// <summary>
/// Holds the forecasts of a day against what came after it. Pure: a forecast is made again from the record up to that day, as
/// it is known now, and a record that was corrected since is taken as corrected on both sides.
/// </summary>
public static class ForecastChecks
{
    /// <summary>The checks of a boat, one a mounting that was on at that day and had a usable trial in its present stretch.</summary>
    /// <param name="known">Everything that bears on the boat, to this day.</param>
    /// <param name="made">The last day that the forecasts know.</param>
    /// <param name="priors">What the fleet had shown on that day; what the trade expects when left out.</param>
    public static IReadOnlyList<ForecastCheck> Of(Dossier known, DateOnly made, FleetPriors? priors = null)
    {
        ArgumentNullException.ThrowIfNull(known);
        return Of(BoatHistory.Tell(known with { Until = made }), BoatHistory.Tell(known), priors ?? FleetPriors.Trade);
    }

    /// <summary>The checks of a boat out of the two tellings of its history.</summary>
    /// <param name="then">As far as the forecasts know.</param>
    /// <param name="now">To this day.</param>
    /// <param name="priors">What the fleet had shown on that day.</param>
    public static IReadOnlyList<ForecastCheck> Of(BoatHistory then, BoatHistory now, FleetPriors priors)
    {
        ArgumentNullException.ThrowIfNull(then);
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(priors);
        var after = now.Mountings.ToDictionary(m => m.Id, StringComparer.Ordinal);
        return [.. then.Mountings.Where(m => m.To is null && after.ContainsKey(m.Id)).Select(m => Check(then, m, now, after[m.Id], priors)).OfType<ForecastCheck>()];
    }

    private static ForecastCheck? Check(BoatHistory then, MountingSpan mounting, BoatHistory now, MountingSpan later, FleetPriors priors)
    {
        var told = Assess.Mounting(then, mounting, priors);
        if (told.Exit.State == BandExitState.NoTrialSinceNewBaseline || AssessMounting.Drift(then, mounting, priors) is not { } drift) return null;
        var (engine, meter) = AssessMounting.Hung(then, mounting);
        var last = told.Trials.Last(MountingSeries.Usable);
        var came = Since(told, last, Assess.Mounting(now, later, priors), drift.LastTrialHours);
        return new ForecastCheck(
            then.Boat,
            then.Registered?.Name ?? then.Boat,
            mounting.Fitted.Position,
            mounting.Id,
            NextTrial(drift, engine, came),
            engine is { BandLowRpm: { } low, BandHighRpm: { } high } && told.Exit is { State: BandExitState.Forecast, Edge: { } edge } exit
                ? ExitOf(exit, Left(came, edge == BandEdge.Top ? rpm => rpm > high : rpm => rpm < low))
                : null,
            engine is { BandLowRpm: { } bottom, BandHighRpm: { } top } && told.Exit.Within100HoursChance is { } chance && meter?.Readings is [.., var read]
                ? new ChanceCheck(chance, Happened(Left(came, rpm => rpm > top || rpm < bottom), read.Hours - drift.LastTrialHours + NextTrialCard.ActWithinHours))
                : null);
    }

    /// <summary>
    /// The trials of the same stretch that came later and are of the same kind of RPM, by hours after the last one then. None of what came
    /// after a strike or work on the prop: that was not foretold.
    /// </summary>
    private static List<(double Hours, double Rpm)> Since(MountingFinding told, TrialFinding last, MountingFinding present, double lastHours)
    {
        if (present.AtReference != told.AtReference || present.Trials.FirstOrDefault(t => t.Entry == last.Entry) is not { } same) return [];
        var known = told.Trials.Select(t => t.Entry).ToHashSet();
        return
        [
            .. present.Trials.Where(t => MountingSeries.Usable(t) && t.Stretch == same.Stretch && !known.Contains(t.Entry) && t.Hours >= lastHours)
                .Select(t => (t.Hours!.Value - lastHours, t.LineRpm(told.AtReference))).OrderBy(t => t.Item1),
        ];
    }

    private static IntervalCheck NextTrial(WearDrift drift, EngineCard? engine, List<(double Hours, double Rpm)> came)
    {
        if (came.Count == 0) return new IntervalCheck(IntervalOutcome.Open, null, null, WearDrift.Level, null);
        var gauge = GaugeStep.StandardUncertainty(engine?.TachometerStepRpm ?? TachometerSteps.UnknownRpm);
        var foretold = ForetoldReading.Of(drift.Found, drift.Settings, came[0].Hours, gauge, WearDrift.Level)!;
        var rpm = came[0].Rpm;
        return new IntervalCheck(rpm < foretold.Low ? IntervalOutcome.Below : rpm > foretold.High ? IntervalOutcome.Above : IntervalOutcome.Held, foretold.Low, foretold.High, WearDrift.Level, rpm);
    }

    /// <summary>When it left for good: after the last trial inside, at or before the first of those outside that no other inside follows.</summary>
    /// <returns>The last hours inside [h], 0 being the trial of the forecast; the first outside, null when the last trial lies inside.</returns>
    private static (double Inside, double? Outside) Left(List<(double Hours, double Rpm)> came, Func<double, bool> outside)
    {
        var at = came.FindLastIndex(t => !outside(t.Rpm));
        return (at < 0 ? 0 : came[at].Hours, at == came.Count - 1 ? null : came[at + 1].Hours);
    }

    private static IntervalCheck ExitOf(BandExit exit, (double Inside, double? Outside) left)
    {
        var (earliest, latest) = (exit.EarliestHours ?? 0, exit.LatestHours);
        var outcome = left.Inside > latest ? IntervalOutcome.Above
            : left.Outside is not { } at ? IntervalOutcome.Open
            : at < earliest ? IntervalOutcome.Below
            : left.Inside >= earliest && !(at > latest) ? IntervalOutcome.Held
            : IntervalOutcome.Open;
        return new IntervalCheck(outcome, earliest, latest, exit.Level ?? WearDrift.Level, left.Outside);
    }

    private static bool? Happened((double Inside, double? Outside) left, double within) =>
        left.Outside <= within ? true : left.Inside >= within ? false : null;
}
