using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures.Fleet;

/// <summary>Drift charts of engines of one class side by side, all with the same scales, so that the one that goes its own way is seen.</summary>
/// <param name="Title">What they are of.</param>
/// <param name="Statement">What they show, in a sentence.</param>
/// <param name="Panels">At most twelve, those with the smallest margin first.</param>
/// <param name="Band">The rated band that they share.</param>
/// <param name="Window">What part of hours since the fitting and of RPM all of them show.</param>
/// <param name="LeftOut">How many more engines of the class have trials.</param>
public sealed record DriftPanels(string Title, string Statement, IReadOnlyList<DriftPanel> Panels, RatedBand Band, PictureWindow Window, int LeftOut)
    : Picture(Title, Statement)
{
    /// <summary>More are not told apart on a phone.</summary>
    public const int MostPanels = 12;

    /// <summary>Names told in the sentence.</summary>
    private const int MostNames = 4;

    /// <summary>Least height of a panel [RPM]: a gauge's scatter must not look like a cliff.</summary>
    private const double LeastSpanRpm = 400;

    /// <summary>One picture for each class that has two engines with trials, the largest class first. A class is an engine model with its rated band.</summary>
    /// <param name="findings">The boats, in any order.</param>
    public static IReadOnlyList<DriftPanels> Of(IReadOnlyList<BoatFinding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return
        [
            .. findings.Where(f => f.Retired is null).SelectMany(f => f.Positions.Select(p => (Finding: f, Position: p)))
                .Where(e => e.Position is { Mounting: not null, Engine: { BandLowRpm: not null, BandHighRpm: not null } engine } && engine.BandHighRpm - engine.BandLowRpm >= 1)
                .Select(e => (Class: (e.Position.Engine!.Model, e.Position.Engine.BandLowRpm!.Value, e.Position.Engine.BandHighRpm!.Value), e.Position, Panel: Panel(e.Finding, e.Position)))
                .Where(e => e.Panel is not null)
                .GroupBy(e => e.Class, e => (e.Position, Panel: e.Panel!))
                .Where(g => g.Count() > 1)
                .OrderByDescending(g => g.Count()).ThenBy(g => g.Key.Model, StringComparer.Ordinal).ThenBy(g => g.Key.Item2)
                .Select(g => Of(g.Key.Model, new RatedBand(g.Key.Item2, g.Key.Item3), [.. g])),
        ];
    }

    private static DriftPanels Of(string? model, RatedBand band, IReadOnlyList<(PositionFinding Position, DriftPanel Panel)> all)
    {
        var ordered = all.OrderBy(e => Standings.Of(e.Position).MarginRpm ?? double.MaxValue).ThenBy(e => e.Panel.Name, StringComparer.Ordinal).Select(e => e.Panel).ToList();
        List<DriftPanel> panels = [.. ordered.Take(MostPanels)];
        var hours = Math.Max(20, panels.Max(p => p.Points.Max(t => t.Hours)) * 1.04);
        var rpm = panels.SelectMany(p => p.Points.Select(t => t.Rpm).Concat(p.Line.SelectMany(l => new[] { l.LowRpm, l.HighRpm }))).Concat([band.LowRpm, band.HighRpm]).ToList();

        // One wild reading must not flatten all panels: no farther than half a band beyond the edges.
        var half = (band.HighRpm - band.LowRpm) / 2;
        var (low, high) = (Math.Max(rpm.Min(), band.LowRpm - half), Math.Min(rpm.Max(), band.HighRpm + half));
        var room = (0.06 * (high - low)) + (Math.Max(0, LeastSpanRpm - (high - low)) / 2);
        var name = model is null ? $"engines of {band.LowRpm:0} to {band.HighRpm:0} RPM" : Fitting.Name(Phrases.Plain(model));
        return new DriftPanels($"{name}: drift of {panels.Count} side by side", Sentence(name, band, ordered), panels, band, new PictureWindow(0, hours, low - room, high + room), ordered.Count - panels.Count);
    }

    private static DriftPanel? Panel(BoatFinding finding, PositionFinding position)
    {
        var mounting = position.Mounting!;
        var drawn = mounting.Trials.Where(t => t is { SetAside: null, Hours: not null } && double.IsFinite(t.Hours.Value)).ToList();
        if (drawn.Count < 2) return null;
        var from = Math.Min(mounting.FittedAtHours ?? double.MaxValue, drawn.Min(t => t.Hours!.Value));
        var present = mounting.Trials.Max(t => t.Stretch);
        var standing = Standings.Of(position);
        var state = standing.Outside ? standing.Sign == "▼" ? StripState.Below : StripState.Above
            : mounting.Exit.Within100HoursChance >= NextTrialCard.ActAtChance ? StripState.Leaving : StripState.Inside;
        return new DriftPanel(
            Phrases.Name(finding, position),
            [.. drawn.Select(t => DriftPictures.Point(t.Stretch == present ? PointKind.Counted : PointKind.EarlierStretch, t.Hours!.Value - from, t.LineRpm(mounting.AtReference), t.GrossChance ?? 0))],
            [.. (mounting.Line?.Points ?? []).Where(p => !p.Forecast).Select(p => p with { Hours = p.Hours - from })],
            state,
            mounting.FleetOnly ? null : mounting.Drift?.Value);
    }

    private static string Sentence(string name, RatedBand band, List<DriftPanel> all)
    {
        string?[] told =
        [
            Told(all, p => p.State == StripState.Above, "above the top"),
            Told(all, p => p.State == StripState.Below, "below the bottom"),
            Told(all, p => p.State == StripState.Leaving, "likely to leave within 100 engine hours"),
        ];
        var said = told.OfType<string>().ToList();
        var rates = all.Where(p => p.DriftPer100Hours is not null).OrderByDescending(p => Math.Abs(p.DriftPer100Hours!.Value)).ToList();
        var fastest = rates.Count == 0 ? "" : $" The fastest drift is {Fitting.Name(rates[0].Name)}'s, {rates[0].DriftPer100Hours:+0;-0;0} RPM per 100 h.";
        return $"{Phrases.Count(all.Count, "engine")} ({name}, rated band {band.LowRpm:0} to {band.HighRpm:0}): {(said.Count == 0 ? "all inside" : string.Join("; ", said))}.{fastest}";
    }

    private static string? Told(List<DriftPanel> all, Func<DriftPanel, bool> which, string where)
    {
        var some = all.Where(which).Select(p => Fitting.Name(p.Name)).ToList();
        return some.Count == 0 ? null : $"{some.Count} {where} ({Fitting.List(some, MostNames)})";
    }
}

/// <summary>One engine among its like.</summary>
/// <param name="Name">Boat and position.</param>
/// <param name="Points">Trials that count, by hours since the fitting.</param>
/// <param name="Line">The level over the hours with its interval; empty where the trials say nothing of a drift.</param>
/// <param name="State">Where it stands.</param>
/// <param name="DriftPer100Hours">Drift [RPM per 100 engine hours]; null where its own trials say next to nothing of it.</param>
public sealed record DriftPanel(string Name, IReadOnlyList<PicturePoint> Points, IReadOnlyList<DriftPoint> Line, StripState State, double? DriftPer100Hours);
