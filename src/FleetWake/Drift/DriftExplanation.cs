using System.Globalization;
using FleetWake.Statistics.Drift;

namespace FleetWake.Drift;

/// <summary>Tells the evidence for one mounting in plain words.</summary>
internal static class DriftExplanation
{
    public static IEnumerable<string> Of(DriftOutcome of, DriftFleet fleet)
    {
        var (a, member, alarms) = (of.Assessment, of.Row.Member, fleet.Calibration);
        var (prior, settings) = fleet.Prior.Member(member);
        var series = member.Series;
        var noise = 0.0;
        for (var j = 0; j < settings.Noise.Shares.Length; j++) noise += settings.Noise.Weights[j] * settings.Noise.Shares[j];
        yield return Say($"Mounting {member.Id}, {member.Material} in {member.Water} water{(member.Boat is null ? "" : ", boat " + member.Boat)}: {a.Trials} of {series.Trials.Count} trials count.");
        yield return Say($"The fleet, its boat and its group make {SlopeGrid.Mean(prior.Weights):F1} rpm per 100 h likely, 80 % between {SlopeGrid.Quantile(prior.Weights, 0.1):F1} and {SlopeGrid.Quantile(prior.Weights, 0.9):F1}.");
        yield return Say($"With its own trials: {a.RpmPer100Hours.Value:F1} rpm per 100 h, 80 % between {a.RpmPer100Hours.Low:F1} and {a.RpmPer100Hours.High:F1}.");
        if (a.PriorOnly) yield return $"Its own trials say next to nothing about drift ({Why(a, series)}): this is what its fleet and its boat make likely, and no date is drawn from it.";
        if (a.HoursFell) yield return "Its hours went back: the highest reading so far was taken in place of each lower one. Check the meter.";
        if (a.LevelRpm is { } level) yield return Say($"Level at the last trial: {level.Value:F0} rpm, 80 % between {level.Low:F0} and {level.High:F0}; {(series.RatedMinRpm > 0 && series.RatedMaxRpm > 0 ? Say($"rated band {series.RatedMinRpm:F0} to {series.RatedMaxRpm:F0}") : "no rated band told")}.");
        if (Below(a, series) is { } below) yield return below;
        yield return Exit(a);
        if (LowerEnd(a) is { } lower) yield return lower;
        foreach (var step in a.Steps) yield return Step(step, series);
        yield return Say($"One trial is expected to scatter by {100 * noise:F2} % and to be grossly wrong once in {1 / settings.GrossChance:F0}.");
        yield return "";
        yield return "   week   hours     rpm  air C  load kg  gross error  evidence for drift so far";
        var evidence = of.Evidence.ToDictionary(e => e.Trial, e => e.Log);
        foreach (var (i, t) in series.Trials.Index().OrderBy(x => x.Item.Week))
        {
            foreach (var e in series.Events.Where(e => Between(series, i, e))) yield return Say($"{e.Week,7:F2}   {Name(e.Kind)}");
            yield return Say($"{t.Week,7:F2}{t.EngineHours,8:F1}{t.Rpm,8:F0}{t.AirCelsius,7:F1}{t.LoadKilograms,9:F0}{100 * a.GrossChances[i],11:F0} %{(evidence.TryGetValue(i, out var log) ? Math.Exp(log) : 1),14:F2} to 1");
        }

        yield return "";
        yield return of.Alarm is { } alarm
            ? Say($"Alarm at trial {of.Row.TrialNumbers[alarm.Trial]}: the evidence reached {Math.Exp(alarm.Log):F1} to 1 where {Math.Exp(alarms.Threshold):F1} to 1 raises it.")
            : Say($"No alarm: the evidence never reached {Math.Exp(alarms.Threshold):F1} to 1. That does not say that the prop is sound; only a look does.");
        yield return Say($"Such an alarm comes {alarms.FalseAlarmsPerBoatYear:F3} times a boat-year in fleets without drift on {(alarms.OwnSchedule ? "this fleet's own trials" : "eight trials a year, for this fleet has too few of its own")}, 95 % between {alarms.Low:F3} and {alarms.High:F3} (simulated, {alarms.BoatYears:F0} boat-years).");
        yield return "Figures are a decision aid: the owner's manual, local rules and a licensed technician win.";
    }

    /// <summary>The forecast looks at the top alone; a boat that lugs must not be told as one in its band.</summary>
    private static string? Below(DriftAssessment a, DriftSeries series) => a.LevelRpm switch
    {
        { } level when level.High < series.RatedMinRpm => Say($"It is BELOW its rated band: the engine lugs. Look for load, fouling, rough blades and a weak engine."),
        { } level when level.Value < series.RatedMinRpm => Say($"Its level lies below its rated band, but within the doubt of it."),
        _ => null,
    };

    private static string Exit(DriftAssessment a) => a.Exit switch
    {
        null => "No forecast of leaving the band: there is no trial, or no rated band.",
        { LatestHours: 0 } => "It is above its rated band already.",
        var e when a.PriorOnly => Say($"Leaving the band: not told, for the drift is not its own (chance within 500 h {100 * e.Within500HoursChance:F0} %)."),
        { EarliestHours: >= BandExit.HorizonHours } => Say($"It does not reach the top of its band within {BandExit.HorizonHours:F0} h of the last trial, as far as can be seen."),
        var e => Say($"Leaves its band at the top, counted from the last trial: {Hours(e.MedianHours)}; 80 % from \"{Hours(e.EarliestHours)}\" to \"{Hours(e.LatestHours)}\"; chance within 500 h {100 * e.Within500HoursChance:F0} %."),
    };

    /// <summary>Told only where that end is the nearer one, by the middle of both forecasts or else by their earliest hours.</summary>
    private static string? LowerEnd(DriftAssessment a)
    {
        if (a is not { Exit: { } top, ExitBelow: { } e } || a.PriorOnly || e.EarliestHours >= BandExit.HorizonHours || e.LatestHours == 0) return null;
        return e.MedianHours < top.MedianHours || (e.MedianHours == top.MedianHours && e.EarliestHours < top.EarliestHours)
            ? Say($"The lower end is the nearer one. Below its rated band: {Hours(e.MedianHours)}; 80 % between {Hours(e.EarliestHours)} and {Hours(e.LatestHours)}; chance within 500 h {100 * e.Within500HoursChance:F0} %. RPM that fall mean growth, rough blades or a weak engine.")
            : null;
    }

    /// <summary>A strike costs, a repitch gives back; what both did between two trials is one step.</summary>
    private static string Step(StepEffect step, DriftSeries series)
    {
        var events = step.Events.Select(e => series.Events[e]).ToArray();
        var names = string.Join(" and ", events.Select(e => Say($"{Short(e.Kind)} of week {e.Week:F2}")));
        var what = events.Select(e => e.Kind).Distinct().ToArray() switch
        {
            _ when step.Rpm.Low <= 0 && step.Rpm.High >= 0 => $"The {names} made no change of RPM that the trials can tell",
            [StepKind.Strike] => $"The {names} cost",
            [StepKind.Repitch] when step.Rpm.High < 0 => $"The {names} gave back",
            _ => $"The {names} moved the level by",
        };
        var told = Say($"{what}: {step.Rpm.Value:+0;-0;0} rpm, 80 % between {step.Rpm.Low:+0;-0;0} and {step.Rpm.High:+0;-0;0}");
        return told + (step.OwnEvidenceNats < DriftAssessment.LeastOwnEvidenceNats ? "; its trials say next to nothing, this is what such events do anywhere." : ", drift and weather allowed for.");
    }

    private static string Short(StepKind kind) => kind switch
    {
        StepKind.Strike => "strike",
        StepKind.Repitch => "repitch or repair",
        _ => "change (hub, cleaning, engine, tachometer, rig or relaunch)",
    };

    private static string Why(DriftAssessment a, DriftSeries series) =>
        a.Trials < 2 ? "fewer than two count"
        : series.Trials.Max(t => t.EngineHours) <= series.Trials.Min(t => t.EngineHours) ? "all at one hour"
        : "too rough, or too few hours apart";

    private static string Hours(double h) => h switch
    {
        0 => "already",
        >= BandExit.HorizonHours => Say($"beyond {BandExit.HorizonHours:F0} h"),
        _ => Say($"after {h:F0} h"),
    };

    private static bool Between(DriftSeries series, int trial, DriftEvent e)
    {
        var before = series.Trials.Where(t => t.Week < series.Trials[trial].Week).Select(t => t.Week).DefaultIfEmpty(double.NegativeInfinity).Max();
        return e.Week >= before && e.Week < series.Trials[trial].Week;
    }

    private static string Name(StepKind kind) => kind switch
    {
        StepKind.None => "a look: no new baseline",
        StepKind.Strike => "STRIKE: the level may step, more likely up",
        StepKind.Repitch => "REPITCH or repair: the level may go anywhere",
        _ => "NEW BASELINE: the level may go anywhere",
    };

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
