using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Statistics;
using FleetWake.Statistics.Drift;

namespace FleetWake.Logbook.Findings;

/// <summary>A mounting's trials and events as the drift estimator takes them, and the way back from its answer.</summary>
/// <param name="Series">Hours on the engine's meter, RPM of one kind, weeks since the fitting.</param>
/// <param name="Trials">For each trial of the series its place among the mounting's trials.</param>
/// <param name="Steps">For each event of the series what happened.</param>
internal sealed record MountingSeries(DriftSeries Series, IReadOnlyList<int> Trials, IReadOnlyList<MountingStep> Steps)
{
    /// <summary>
    /// Scatter of a usual trial, a run each way, as a share of the RPM [1]: what a trial's own runs show beyond it widens that
    /// trial alone. Judgement, as the recommendation for the fleet's own noise.
    /// </summary>
    private const double UsualShare = 0.007;

    /// <summary>Between two things of one moment [weeks]: their order counts, not the time between.</summary>
    private const double Instant = 1e-7;

    /// <summary>The series of a mounting.</summary>
    /// <param name="history">The boat's history.</param>
    /// <param name="trials">Its trials in order, each used or set aside.</param>
    /// <param name="worked">The same trials with their entries and conditions.</param>
    /// <param name="steps">What happened besides, in order.</param>
    /// <param name="engine">The engine, for its rated band.</param>
    /// <param name="atReference">The line is one of readings at reference conditions.</param>
    public static MountingSeries Of(
        BoatHistory history, IReadOnlyList<TrialFinding> trials, IReadOnlyList<AssessMounting.Worked> worked, IReadOnlyList<MountingStep> steps, EngineCard? engine, bool atReference)
    {
        // What was written down at the dock is never corrected for load; what was brought to reference elsewhere was. No line
        // holds loads of both kinds: those of the fewer trials are left out.
        var used = worked.Where((_, i) => Usable(trials[i])).ToList();
        var uncorrected = used.Count(w => w.LoadKilograms is not null) >= used.Count(w => w.LoadDeltaKilograms is not null);
        var usualLoad = UsualLoad(used);
        double? Load(AssessMounting.Worked of) => uncorrected ? of.LoadKilograms - usualLoad : of.LoadDeltaKilograms;
        var gauge = GaugeStep.StandardUncertainty(engine?.TachometerStepRpm ?? TachometerSteps.UnknownRpm);
        var (points, places, events, happened) = (new List<DriftTrial>(), new List<int>(), new List<DriftEvent>(), new List<MountingStep>());
        var things = trials.Select((t, i) => (worked[i].Entry, Trial: i, Step: (MountingStep?)null)).Where(t => Usable(trials[t.Trial]))
            .Concat(steps.Where(s => s.NewBaseline).Select(s => (s.Entry, Trial: -1, Step: (MountingStep?)s)))
            .OrderBy(t => t.Entry, history.Order).ToList();
        if (things.Count == 0) return new(new(0, 0, [], []), [], []);

        // A trial in the very moment of an event counts as before it, so no two things may share one.
        var (began, week) = (things[0].Entry.Happened(), double.NegativeInfinity);
        foreach (var (entry, at, step) in things)
        {
            week = Math.Max(week + Instant, (entry.Happened() - began).TotalDays / 7);
            if (step is not null)
            {
                events.Add(new(week, KindOf(step)));
                happened.Add(step);
                continue;
            }

            var (trial, of) = (trials[at], worked[at]);
            // As read, what the air does is no small rest of a correction: nothing is better than the wrong belief about it.
            points.Add(new(week, trial.Hours!.Value, trial.LineRpm(atReference), atReference ? of.AirCelsius : null, Load(of), OwnSd(trial, gauge)));
            places.Add(at);
        }

        var series = new DriftSeries(engine?.BandLowRpm ?? 0, engine?.BandHighRpm ?? 0, points, events) { LoadUncorrected = uncorrected && usualLoad is not null };
        return new(series, places, happened);
    }

    /// <summary>Whether a trial counts for drift.</summary>
    public static bool Usable(TrialFinding trial) => trial is { SetAside: null, Hours: not null };

    private static StepKind KindOf(MountingStep step) => step.Kind switch
    {
        HistoryMarkKind.Strike => StepKind.Strike,
        HistoryMarkKind.Repitch or HistoryMarkKind.Repair => StepKind.Repitch,
        _ => StepKind.NewBaseline,
    };

    /// <summary>What was told most often lies in the middle: half of the trials carried more, half less.</summary>
    private static double? UsualLoad(IReadOnlyList<AssessMounting.Worked> used)
    {
        var loads = used.Select(w => w.LoadKilograms).OfType<double>().Order().ToList();
        return loads.Count == 0 ? null : (loads[(loads.Count - 1) / 2] + loads[loads.Count / 2]) / 2;
    }

    /// <summary>
    /// What a trial's own runs show beyond a usual trial, or its gauge's step beyond the least noise that a fleet is believed to have: a
    /// gauge of coarse steps repeats itself and looks exact.
    /// </summary>
    private static double OwnSd(TrialFinding trial, double gauge)
    {
        var byRuns = Beyond(trial.RpmSd ?? 0, UsualShare * trial.Rpm);
        var byGauge = trial.Normalised ? 0 : Beyond(gauge, NoiseNodes.LeastShare * trial.Rpm);
        return Math.Max(byRuns, byGauge);
    }

    private static double Beyond(double sd, double usual) => sd > usual ? Math.Sqrt((sd * sd) - (usual * usual)) : 0;
}
