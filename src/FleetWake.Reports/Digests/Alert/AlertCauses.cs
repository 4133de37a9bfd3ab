using FleetWake.Logbook;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Schedules;
using FleetWake.Logbook.Strikes;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Alert;

/// <summary>What cannot wait for Monday.</summary>
/// <param name="Key">Tells it from any other, for ever: one is told once.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Boat">The boat's id.</param>
/// <param name="Position">The position, where it is about one.</param>
/// <param name="On">Dock's date since when; null where none is known.</param>
/// <param name="Name">Boat and position for people.</param>
/// <param name="Dock">The boat's dock; null while it is not registered.</param>
/// <param name="Sentence">What is the matter.</param>
/// <param name="Act">What to do.</param>
public sealed record AlertCause(string Key, AlertKind Kind, string Boat, Position? Position, DateOnly? On, string Name, string? Dock, string Sentence, string Act)
{
    /// <summary>Of two of a kind the one that is told first: how hard a strike was.</summary>
    public int Weight { get; init; }

    /// <summary>Neither quiet hours nor gathering delay it.</summary>
    public bool Urgent => Kind is AlertKind.TakeOff or AlertKind.SevereStrike;
}

/// <summary>Kinds of what is told by alert, most urgent first.</summary>
public enum AlertKind
{
    /// <summary>A verdict of "take off".</summary>
    TakeOff,

    /// <summary>A strike that puts a boat out of hire.</summary>
    SevereStrike,

    /// <summary>Outside its rated band.</summary>
    OutsideBand,

    /// <summary>More likely than not outside within the hours that the operator set.</summary>
    Exit,

    /// <summary>A drift alarm.</summary>
    Drift,

    /// <summary>Records that contradict each other.</summary>
    Question,
}

/// <summary>Reads causes out of findings. Pure: what stands now, told or not.</summary>
public static class AlertCauses
{
    /// <summary>The causes that stand, most urgent first.</summary>
    /// <param name="findings">The boats.</param>
    /// <param name="policy">The operator's policy.</param>
    /// <param name="rule">How alerts are told.</param>
    public static IReadOnlyList<AlertCause> Of(IEnumerable<BoatFinding> findings, FleetPolicy policy, AlertRule rule) =>
        [.. findings.Where(f => f.Retired is null).SelectMany(f => Of(f, policy, rule)).OrderBy(c => c.Kind).ThenByDescending(c => c.Weight).ThenBy(c => c.Name, StringComparer.OrdinalIgnoreCase).ThenBy(c => c.Key, StringComparer.Ordinal)];

    private static IEnumerable<AlertCause> Of(BoatFinding finding, FleetPolicy policy, AlertRule rule)
    {
        var boat = Phrases.Plain(finding.DisplayName());
        foreach (var position in finding.Positions)
        {
            AlertCause Cause(string key, AlertKind kind, DateOnly? on, string sentence, string act) =>
                new(key, kind, finding.Boat, position.Position, on, Phrases.Name(finding, position), finding.Registered?.Dock, Phrases.Plain(sentence), Phrases.Plain(act));

            foreach (var look in position.Uncleared.Where(i => i.Verdict == Verdict.TakeOff))
                yield return Cause(
                    $"take-off/{(look.Original ?? look.Entry)?.ToString() ?? $"{finding.Boat}/{Words.Of(position.Position)}/{look.On:yyyy-MM-dd}"}", AlertKind.TakeOff, look.On,
                    $"Inspection of {look.On:yyyy-MM-dd}: take off{(look.Marks.Count == 0 ? "" : $", with {string.Join(", ", look.Marks.Select(m => Words.Prose(m)))}")}.",
                    "Not for hire. The prop off, and a later inspection with the verdict fit.");
            foreach (var strike in position.OpenStrikes.Where(s => s.LiftedOn is null && HireStates.Of(s, policy.Hire) is var word && word == HireWord.Out))
                yield return Cause(
                    $"strike/{strike.Original ?? strike.Entry}", AlertKind.SevereStrike, strike.On,
                    $"Strike on {(strike.Object == StruckObject.Unknown ? "something unknown" : Words.Prose(strike.Object))} ({Words.Prose(strike.Severity)}) on {strike.On:yyyy-MM-dd}.",
                    $"Not for hire. Released by: {HireStates.Release(strike.Severity, strike.Material, HireWord.Out)}") with
                { Weight = (int)strike.Severity };
            if (position.Mounting is not { } mounting || finding.IsLaidUp()) continue;

            // One a stretch, for a new baseline may leave the band anew; and so may one that trials showed back inside.
            var place = $"{finding.Boat}/{Words.Of(position.Position)}/{mounting.Mounting}";
            var stretch = $"{place}/{mounting.LastWideOpen(position.Engine)?.Stretch ?? 0}{(mounting.TimesBackInBand(position.Engine) is > 0 and var back ? $"/{back}" : "")}";
            if (mounting.Band.State is BandState.AboveTop or BandState.BelowBottom)
                yield return Cause(
                    $"outside/{stretch}", AlertKind.OutsideBand, mounting.LastWideOpen(position.Engine)?.On,
                    $"{(mounting.Band.State == BandState.AboveTop ? "Over-revving" : "Lugging")}: {mounting.Band.ObservedRpm:0} RPM at its last wide-open trial, outside its rated band.",
                    "Look at the likely causes one by one, then trial again; the owner's manual wins.");
            else if (rule.ExitWithinHours is { } within && HoursLeft(mounting, position) is { } left && left <= within)
                yield return Cause(
                    $"exit/{stretch}", AlertKind.Exit, null,
                    $"More likely than not outside its band within {Math.Max(0, left):0} engine hours.{(mounting.Exit.Dates?.On is { } day ? $" By its use about {day:yyyy-MM-dd}." : "")}",
                    "An inspection, and one more trial, before those hours are run.");
            if (mounting.Watch is { RaisedOn: { } raised } watch)
                yield return Cause(
                    $"drift/{place}/{watch.Answered}", AlertKind.Drift, raised,
                    $"Drift alarm since the trial of {raised:yyyy-MM-dd}: its trials are {watch.EvidenceInWords()} times as likely with drift as without.",
                    "Look at blades and hub, and run one more trial; the owner's manual wins.");
        }

        foreach (var question in finding.Contradictions)
            yield return new AlertCause(
                $"question/{Words.Of(question.Kind)}/{string.Join('/', question.Entries)}", AlertKind.Question, finding.Boat, null, null, boat, finding.Registered?.Dock,
                Phrases.Plain(question.Question), "Answer it in the office: amend or retract the record that was wrong, or say that both are right.");
    }

    /// <summary>Engine hours from the last reading to the edge that it has reached with a chance of one half [h]; null where nothing is forecast.</summary>
    private static double? HoursLeft(MountingFinding mounting, PositionFinding position)
    {
        if (mounting.Exit is not { State: BandExitState.Forecast, HoursFromLastTrial: { } hours }) return null;
        var trial = mounting.Trials.LastOrDefault(t => t is { SetAside: null, Hours: not null })?.Hours;
        return position.EngineHours is { } now && trial is { } at && now > at ? hours - (now - at) : hours;
    }
}
