using FleetWake.Logbook;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Statistics;

namespace FleetWake.Reports.Pictures;

/// <summary>The sentences that pictures and digests share, so that a chart and the table beside it never differ.</summary>
public static class Phrases
{
    /// <summary>A reading that is likelier wrong than right is named [1]; judgement.</summary>
    private const double LikelyWrong = 0.5;

    /// <summary>What the RPM of a drift is, for captions.</summary>
    public static string Conditions(MountingFinding mounting) =>
        mounting.AtReference ? "Line and drift are of RPM at reference air." : "Line and drift are of RPM as read, not brought to reference air: weather is part of the scatter.";

    /// <summary>Boat, position where it has several, and prop.</summary>
    public static string Title(BoatFinding finding, PositionFinding position)
    {
        var prop = position.Mounting?.Prop;
        var size = prop is { DiameterInches: { } d, PitchInches: { } p } ? $", {d:0.##} x {p:0.##} in" : "";
        return $"{Name(finding, position)}{(prop is null ? "" : $": prop {Plain(prop.Prop)}{size}")}";
    }

    /// <summary>The boat, and its position where the boat has more than one.</summary>
    public static string Name(BoatFinding finding, PositionFinding position) =>
        finding.Positions.Count > 1 || position.Position != Position.Single
            ? $"{Plain(finding.DisplayName())}, {Words.Prose(position.Position)}"
            : Plain(finding.DisplayName());

    /// <summary>The finding of a position in one sentence with its numbers.</summary>
    public static string Statement(BoatFinding finding, PositionFinding position)
    {
        var mounting = position.Mounting!;
        var counted = mounting.Trials.Count(t => t.SetAside is null);
        var aside = mounting.Trials.Count - counted;
        string?[] clauses =
        [
            Standings.Of(position).Sentence,
            mounting.FleetOnly || mounting.Drift is null ? Drift(mounting) : $"drift {Drift(mounting)}",
            Exit(mounting.Exit),
            Alarm(mounting.Watch),
            .. mounting.Steps.Select(s => StepWords.Clause(mounting, s)),
            $"{Count(counted, "trial")} counted{(aside > 0 ? $", {aside} set aside" : "")}",
            Wrong(mounting),
        ];
        return $"{Name(finding, position)}: {string.Join("; ", clauses.OfType<string>())}. {Conditions(mounting)}";
    }

    /// <summary>Drift with its interval.</summary>
    public static string Drift(Estimate drift) =>
        $"{drift.Value:+0;-0;0} RPM per 100 h ({drift.Low:+0;-0;0} to {drift.High:+0;-0;0} at {Percent(drift.Level)})";

    /// <summary>Drift with its interval, and whose it is where a mounting's own trials say next to nothing.</summary>
    public static string Drift(MountingFinding mounting) => mounting switch
    {
        { Drift: null } => "no drift stated: no usable trial",
        { FleetOnly: true, Drift: { } fleets } => $"mostly what its fleet makes likely, {Drift(fleets)}: its own trials say next to nothing yet",
        { Drift: { } own } => Drift(own),
    };

    /// <summary>What can be said of leaving the band.</summary>
    public static string Exit(BandExit exit) => exit.State switch
    {
        BandExitState.TooFewTrials => "no date of leaving its band: its own trials say next to nothing of a drift",
        BandExitState.NoTrialSinceNewBaseline => "no trial since the last strike, work on the prop or change of the boat, so no forecast",
        BandExitState.AlreadyOutside => "already outside its band",
        BandExitState.BeyondHorizon => $"leaves its band beyond the horizon of 2000 engine hours, if ever{exit.EarliestHours switch { null => "", 0 => " (and one chance in ten or more that it is outside already)", { } h => $" (one chance in ten that it is within {h:0} h)" }}",
        BandExitState.Forecast =>
            $"reaches the {Words.Prose(exit.Edge!)} about {exit.HoursFromLastTrial:0} h after the last trial ({exit.EarliestHours:0} to {Latest(exit)} at {Percent(exit.Level ?? 0)}){Dates(exit.Dates)}",
        _ => "no forecast: band, engine or prop is not on record",
    };

    /// <summary>What a picture says under its hours of leaving the band; null where it has nothing to add to its lines.</summary>
    public static string? Outlook(BandExit exit) => exit switch
    {
        { State: BandExitState.Forecast, Edge: { } edge, Dates: { On: { } on } dates } => $"reaches the {Words.Prose(edge)} about {on:yyyy-MM-dd}, {Percent(dates.Level)}: {Span(dates)}",
        { State: BandExitState.Forecast, Edge: { } edge } e => $"reaches the {Words.Prose(edge)} about {e.HoursFromLastTrial:0} h after the last trial ({Percent(e.Level ?? 0)}: {e.EarliestHours:0} to {(e.LatestHours is { } h ? $"{h:0}" : "over 2000")} h)",
        { State: BandExitState.BeyondHorizon } => "leaves its band beyond the horizon of 2000 engine hours, if ever",
        { State: BandExitState.AlreadyOutside } => "already outside its band",
        { State: BandExitState.TooFewTrials } => "its own trials say next to nothing of a drift: no line, no date",
        { State: BandExitState.NoTrialSinceNewBaseline } => "no trial since the last new baseline: no forecast",
        _ => null,
    };

    /// <summary>An open drift alarm with its rate; null without one.</summary>
    public static string? Alarm(DriftWatch? watch) =>
        watch is { RaisedOn: { } on } ? $"drift alarm since the trial of {on:yyyy-MM-dd} ({FalseAlarms(watch)})" : null;

    /// <summary>How often such an alarm is false.</summary>
    public static string FalseAlarms(DriftWatch watch)
    {
        var rate = watch.FalseAlarmsPerBoatYear < 0.005 ? "fewer than 0.01" : $"{watch.FalseAlarmsPerBoatYear:0.00}";
        return $"{rate} false alarms a boat-year{(watch.OnOwnSchedule ? " on this fleet's trials" : "")}";
    }

    /// <summary>Which readings are out of line with the others: misread, or something gave way. Null when none is.</summary>
    public static string? Wrong(MountingFinding mounting)
    {
        var judged = mounting.Trials.Where(t => t.GrossChance is not null).ToList();
        var wrong = judged.Where(t => t.GrossChance > LikelyWrong).ToList();
        return wrong.Count == 0
            ? null
            : $"{wrong.Count} of {Count(judged.Count, "trial")} {(wrong.Count == 1 ? "is" : "are")} out of line with the others: {string.Join(", ", wrong.Select(t => $"{t.On:yyyy-MM-dd}"))}";
    }

    /// <summary>A level with a space that does not break.</summary>
    public static string Percent(double level) => $"{100 * level:0}\u00A0%";

    /// <summary>A count with its noun.</summary>
    public static string Count(int n, string thing) => n == 1 ? $"1 {thing}" : $"{n} {thing}s";

    /// <summary>
    /// Text typed by people, on one line: control characters and signs that turn the reading direction become a
    /// space, so that a name can neither end a header nor rearrange the sentence around it.
    /// </summary>
    public static string Plain(string typed) => string.Concat(typed.Select(c =>
        char.IsControl(c) || c is '\u2028' or '\u2029' or (>= '\u202A' and <= '\u202E') or (>= '\u2066' and <= '\u2069') ? ' ' : c)).Trim();

    private static string Dates(BandExitDates? dates) => dates switch
    {
        null => "",
        { On: { } on } => $", by its use about {on:yyyy-MM-dd} ({Span(dates)})",
        { Earliest: { } early } => $", by its use hardly before {early:yyyy-MM-dd}",
        _ => ", by its use beyond the horizon",
    };

    private static string Span(BandExitDates dates) =>
        $"{(dates.Earliest is { } from ? from <= dates.ReckonedFrom ? "perhaps already" : $"{from:yyyy-MM-dd}" : "beyond the horizon")} to {(dates.Latest is { } to ? $"{to:yyyy-MM-dd}" : "beyond the horizon")}";

    private static string Latest(BandExit exit) => exit.LatestHours is { } h ? $"{h:0} h" : "beyond the horizon";
}
