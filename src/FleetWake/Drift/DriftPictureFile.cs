using FleetWake.Commands;
using FleetWake.Logbook;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using FleetWake.Statistics;
using FleetWake.Statistics.Drift;

namespace FleetWake.Drift;

/// <summary>Pictures of one mounting of the tables: its level over the hours, and its sums trial by trial.</summary>
internal static class DriftPictureFile
{
    /// <summary>A step with less evidence than this of its own is what was expected beforehand and nothing seen [nat]; judgement, as in findings.</summary>
    private const double LeastEvidence = 0.05;

    private const int LineSamples = 40;

    /// <summary>The level over the hours.</summary>
    /// <exception cref="CommandException">There is no trial.</exception>
    public static DriftPicture Level(DriftOutcome of)
    {
        var (a, series) = (of.Assessment, Drawn(of));
        var stretches = series.Trials.Select(t => Stretch(series, t)).ToList();
        var present = stretches.Max();
        var last = series.Trials.Max(t => t.EngineHours);
        var points = series.Trials.Select((t, i) => DriftPictures.Point(
            stretches[i] == present ? PointKind.Counted : PointKind.EarlierStretch, t.EngineHours, t.Rpm, i < a.GrossChances.Count ? a.GrossChances[i] : 0)).ToList();
        var band = series.RatedMinRpm < series.RatedMaxRpm ? new RatedBand(series.RatedMinRpm, series.RatedMaxRpm) : null;
        var exit = Exit(a);
        var since = series.Trials.Where((_, i) => stretches[i] == present).ToList();
        var picture = DriftPictures.Of(
            new PictureSubject(of.Row.Member.Id, Position.Single, of.Row.Member.Id, of.Row.Member.Id),
            band,
            since.MinBy(t => t.Week).Rpm,
            points,
            a.PriorOnly ? null : Line(a, since.Min(t => t.EngineHours), last, exit.HoursFromLastTrial),
            Marks(of),
            band is not null && exit is { State: BandExitState.Forecast, Edge: { } edge } e
                ? new PictureExit(edge, edge == BandEdge.Top ? band.HighRpm : band.LowRpm, last + e.HoursFromLastTrial!.Value, last + e.EarliestHours!.Value, last + e.LatestHours)
                : null);
        return picture with
        {
            AtReference = true,
            AlarmHours = of.Alarm is { } alarm ? series.Trials[alarm.Trial].EngineHours : null,
            Outlook = Phrases.Outlook(exit),
        };
    }

    /// <summary>The sums trial by trial.</summary>
    /// <exception cref="CommandException">There is no trial.</exception>
    public static CusumPicture Sums(DriftOutcome of, DriftFleet fleet)
    {
        var (series, c) = (Drawn(of), fleet.Calibration);
        var trials = series.Trials.Index().OrderBy(t => t.Item.Week)
            .Select(t => new CusumTrial($"week {t.Item.Week:0}", t.Item.Rpm, Stretch(series, t.Item), of.Alarm?.Trial == t.Index)).ToList();
        var restarts = trials.Index().Skip(1).Where(t => t.Item.Stretch != trials[t.Index - 1].Stretch).Select(t =>
        {
            var begun = series.Events.Where(e => e.Kind != StepKind.None).OrderBy(e => e.Week).Take(t.Item.Stretch).Skip(trials[t.Index - 1].Stretch).ToList();
            return new CusumRestart(t.Index, Kind(begun), Label(begun));
        }).ToList();
        var watch = of.Evidence.Count == 0 ? null : new DriftWatch(Math.Exp(of.Evidence[^1].Log), Math.Exp(c.Threshold), c.FalseAlarmsPerBoatYear, c.Low, c.High, c.OwnSchedule);
        return CusumPictures.Of(
            new PictureSubject(of.Row.Member.Id, Position.Single, of.Row.Member.Id, of.Row.Member.Id),
            trials,
            restarts,
            GaugeStep.StandardUncertainty(CusumPictures.UnknownStepRpm),
            CusumPictures.Judged(watch));
    }

    private static DriftSeries Drawn(DriftOutcome of) =>
        of.Row.Member.Series is { Trials.Count: > 0 } series ? series : throw new CommandException($"Mounting {of.Row.Member.Id} has no trial to draw.");

    private static DriftLine Line(DriftAssessment a, double first, double last, double? exit)
    {
        var span = Math.Max(last - first, 50);
        var end = last + (1.1 * Math.Clamp(exit ?? span / 2, span / 4, span));
        return new DriftLine(0.8, [
            .. Enumerable.Range(0, LineSamples + 1).Select(i => first + ((end - first) * i / LineSamples)).Append(last).Distinct().Order()
                .Select(h => (Hours: h, Level: a.LevelAt(h - last))).Where(p => p.Level is not null)
                .Select(p => new DriftPoint(p.Hours, p.Level!.Value, p.Level.Low, p.Level.High, p.Hours > last))]);
    }

    /// <summary>At the end that it is likelier to leave by, as in findings.</summary>
    private static Logbook.Findings.BandExit Exit(DriftAssessment a)
    {
        const double horizon = Statistics.Drift.BandExit.HorizonHours;
        if (a is not { Exit: { } top, ExitBelow: { } bottom }) return new(BandExitState.NotKnown);
        if (top.MedianHours <= 0 || bottom.MedianHours <= 0) return new(BandExitState.AlreadyOutside);
        if (a.PriorOnly) return new(BandExitState.TooFewTrials);
        var (up, down) = (top.ChanceWithin(horizon), bottom.ChanceWithin(horizon));
        var (edge, exit) = down > up || (down == up && bottom.MedianHours < top.MedianHours) ? (BandEdge.Bottom, bottom) : (BandEdge.Top, top);
        return exit.MedianHours < horizon
            ? new(BandExitState.Forecast, edge, exit.MedianHours, exit.EarliestHours, exit.LatestHours < horizon ? exit.LatestHours : null, 0.8)
            : new(BandExitState.BeyondHorizon, edge, null, exit.EarliestHours < horizon ? exit.EarliestHours : null, null, 0.8);
    }

    /// <summary>The tables give an event's week alone: its hours lie between those of the trials about it.</summary>
    private static List<PictureMark> Marks(DriftOutcome of)
    {
        var series = of.Row.Member.Series;
        var effects = of.Assessment.Steps.Where(s => s.OwnEvidenceNats >= LeastEvidence)
            .ToDictionary(s => s.Events[0], s => StepWords.Of(s.Rpm) + (s.Events.Count > 1 ? " together" : ""));
        return [
            .. series.Events.Index().Where(e => e.Item.Kind != StepKind.None)
                .Select(e => new PictureMark(Kind([e.Item]), Hours(series, e.Item.Week), Label([e.Item])) { Effect = effects.GetValueOrDefault(e.Index) })
                .OrderBy(m => m.Hours)];
    }

    private static double Hours(DriftSeries series, double week)
    {
        var trials = series.Trials.OrderBy(t => t.Week).ToList();
        var next = trials.FindIndex(t => t.Week >= week);
        if (next <= 0) return trials[next == 0 ? 0 : ^1].EngineHours;
        var (before, after) = (trials[next - 1], trials[next]);
        return before.EngineHours + ((after.EngineHours - before.EngineHours) * (week - before.Week) / (after.Week - before.Week));
    }

    private static int Stretch(DriftSeries series, DriftTrial trial) => series.Events.Count(e => e.Kind != StepKind.None && e.Week < trial.Week);

    private static HistoryMarkKind Kind(IReadOnlyList<DriftEvent> events) =>
        events.Any(e => e.Kind == StepKind.Strike) ? HistoryMarkKind.Strike
        : events.Any(e => e.Kind == StepKind.Repitch) ? HistoryMarkKind.Repitch
        : HistoryMarkKind.Rig;

    private static string Label(IReadOnlyList<DriftEvent> events) => string.Join(" + ", events.Select(e => e.Kind switch
    {
        StepKind.Strike => "strike",
        StepKind.Repitch => "repitch or repair",
        _ => "new baseline",
    }).Distinct());
}
