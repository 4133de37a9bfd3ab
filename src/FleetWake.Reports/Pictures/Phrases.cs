using FleetWake.Logbook;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Statistics;

namespace FleetWake.Reports.Pictures;

/// <summary>The sentences that pictures and digests share, so that a chart and the table beside it never differ.</summary>
public static class Phrases
{
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
        var trials = $"{Count(counted, "trial")} counted{(aside > 0 ? $", {aside} set aside" : "")}";
        var drift = mounting.Drift is { } d ? $"drift {Drift(d)}" : "no drift stated";
        return $"{Name(finding, position)}: {Standings.Of(position).Sentence}; {drift}; {Exit(mounting.Exit)}; {trials}. {Conditions(mounting)}";
    }

    /// <summary>Drift with its interval.</summary>
    public static string Drift(Estimate drift) =>
        $"{drift.Value:+0;-0;0} RPM per 100 h ({drift.Low:+0;-0;0} to {drift.High:+0;-0;0} at {Percent(drift.Level)})";

    /// <summary>What can be said of leaving the band.</summary>
    public static string Exit(BandExit exit) => exit.State switch
    {
        BandExitState.TooFewTrials => "fewer than three usable trials, so no forecast",
        BandExitState.NoTrialSinceNewBaseline => "no trial since the last strike, work on the prop or change of the boat, so no forecast",
        BandExitState.AlreadyOutside => "outside its band already",
        BandExitState.NoDriftShown => "no drift shown beyond the scatter, which does not mean sound",
        BandExitState.BeyondHorizon => "leaves its band beyond the forecast's horizon",
        BandExitState.Forecast =>
            $"reaches the {Words.Prose(exit.Edge!)} about {exit.HoursFromLastTrial:0} h after the last trial ({exit.EarliestHours:0} to {Latest(exit)} at {Percent(exit.Level ?? 0)})",
        _ => "no forecast: band, engine or prop is not on record",
    };

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

    private static string Latest(BandExit exit) => exit.LatestHours is { } h ? $"{h:0} h" : "beyond the horizon";
}
