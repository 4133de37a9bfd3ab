using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>What the record said at the month's end, a position a row, and the trials of the month, a trial a row.</summary>
internal static class PackFindings
{
    private static readonly PackColumn[] Columns =
    [
        new("boat", PackType.Text, "", "id of the boat"),
        new("name", PackType.Text, "", "its name"),
        new("dock", PackType.Text, "", "id of its home dock"),
        new("water", PackType.Text, "", "water it works in"),
        new("position", PackType.Text, "", "engine position"),
        new("engine", PackType.Text, "", "id of the engine"),
        new("prop", PackType.Text, "", "tag of the prop"),
        new("material", PackType.Text, "", "material of the prop"),
        new("mounting", PackType.Text, "", "id of the mounting: the entry that fitted the prop"),
        new("fitted_on", PackType.Day, "", "day of fitting"),
        new("fitted_hours", PackType.Number, "h", "engine hours at fitting"),
        new("band_low", PackType.Number, "rpm", "lowest rated RPM at wide-open throttle"),
        new("band_high", PackType.Number, "rpm", "highest rated RPM at wide-open throttle"),
        new("observed", PackType.Number, "rpm", "what the engine turned at its last wide-open trial"),
        new("margin", PackType.Number, "rpm", "signed distance to the nearer edge; negative outside"),
        new("drift", PackType.Number, "rpm per 100 h", "drift of RPM per 100 engine hours"),
        new("drift_low", PackType.Number, "rpm per 100 h", "lower end of its interval"),
        new("drift_high", PackType.Number, "rpm per 100 h", "upper end of its interval"),
        new("drift_level", PackType.Number, "1", "level of the interval"),
        new("fleet_only", PackType.Truth, "", "its own trials say next to nothing: the drift is the fleet's"),
        new("exit_earliest", PackType.Number, "h", "engine hours from the last trial to the edge of the band, early end"),
        new("exit_latest", PackType.Number, "h", "late end; empty beyond the horizon"),
        new("exit_within_100h", PackType.Number, "1", "chance of leaving the band within 100 engine hours"),
        new("at_reference", PackType.Truth, "", "drift is of RPM at reference air; else as read"),
        new("alarm_since", PackType.Text, "", "drift alarm that stands: entry of the trial that raised it"),
        new("method", PackType.Text, "", "name and version of the method"),
        new("prior", PackType.Whole, "", "number of the fleet prior; 0 for what the trade expects"),
    ];

    private static readonly PackColumn[] TrialColumns =
    [
        new("boat", PackType.Text, "", "id of the boat"),
        new("position", PackType.Text, "", "engine position"),
        new("prop", PackType.Text, "", "tag of the prop"),
        new("mounting", PackType.Text, "", "id of the mounting"),
        new("entry", PackType.Text, "", "entry of the trial"),
        new("day", PackType.Day, "", "day of the trial"),
        new("hours", PackType.Number, "h", "engine hours"),
        new("hours_bridged", PackType.Truth, "", "hours were reckoned between readings rather than read"),
        new("rpm", PackType.Number, "rpm", "RPM as the gauge showed it, mean of the runs"),
        new("rpm_sd", PackType.Number, "rpm", "one standard deviation of it"),
        new("turned", PackType.Number, "rpm", "RPM brought right by the check of the gauge"),
        new("normalised", PackType.Truth, "", "it came already brought to reference conditions"),
        new("speed", PackType.Number, "kn", "speed, mean of the runs"),
        new("slip", PackType.Number, "%", "slip"),
        new("slip_sd", PackType.Number, "%", "one standard deviation of it"),
        new("stretch", PackType.Whole, "", "number of the stretch between new baselines"),
        new("set_aside", PackType.Text, "", "why it does not count; empty when it does"),
        new("gross_chance", PackType.Number, "1", "chance that its reading is grossly wrong"),
    ];

    public static PackTable Of(IReadOnlyList<BoatFinding> findings) => new(
        "findings", "an engine position at the end of the month; only what was on then", Columns,
        [.. findings.Where(f => f.Retired is null).SelectMany(f => f.Positions.Select(p => Row(f, p)))]);

    public static PackTable TrialsOf(IReadOnlyList<BoatFinding> findings, DateOnly from, DateOnly to) => new(
        "trials", "a trial of the month of a prop that was on at its end; every trial stands in records", TrialColumns,
        [
            .. from finding in findings
               from position in finding.Positions
               from trial in position.Mounting?.Trials ?? []
               where trial.On >= @from && trial.On <= to
               orderby trial.On, finding.Boat
               select Row(finding, position, trial),
        ]);

    private static object?[] Row(BoatFinding f, PositionFinding p)
    {
        var m = p.Mounting;
        return
        [
            f.Boat, f.DisplayName(), f.Registered?.Dock, f.Registered is { } card ? Words.Of(card.Water) : null, Words.Of(p.Position), p.Engine?.Engine, m?.Prop.Prop,
            m?.Prop.Material is { } material ? Words.Of(material) : null, m?.Mounting, m?.FittedOn, m?.FittedAtHours, p.Engine?.BandLowRpm, p.Engine?.BandHighRpm, m?.Band.ObservedRpm, m?.Band.MarginRpm,
            m?.Drift?.Value, m?.Drift?.Low, m?.Drift?.High, m?.Drift?.Level, m?.FleetOnly, m?.Exit.EarliestHours, m?.Exit.LatestHours, m?.Exit.Within100HoursChance, m?.AtReference,
            m?.Watch?.RaisedAt is { } raised ? $"{raised}" : null, f.Method, f.PriorNumber,
        ];
    }

    private static object?[] Row(BoatFinding f, PositionFinding p, TrialFinding t) =>
    [
        f.Boat, Words.Of(p.Position), p.Mounting!.Prop.Prop, p.Mounting.Mounting, t.Entry.ToString(), t.On, t.Hours, t.HoursBridged, t.Rpm, t.RpmSd, t.TurnedRpm, t.Normalised, t.SpeedKnots, t.SlipPercent, t.SlipSdPercent,
        t.Stretch, t.SetAside is { } why ? Words.Of(why) : null, t.GrossChance,
    ];
}
