using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Reports.Pictures.Figures;

/// <summary>How often boats of each dock strike, with limits, against the fleet's rate.</summary>
public sealed record StrikeRatePicture(
    string Title, string Statement, string Caption, IReadOnlyList<LimitRow> Rows, double Reference, string ReferenceLabel, double To, string? Note)
    : LimitRows(Title, Statement, Caption, Rows, Reference, ReferenceLabel, To, Note)
{
    /// <summary>Most docks drawn; the rest is counted.</summary>
    public const int MostRows = 14;

    private const int MostNames = 4;

    /// <summary>The picture of a fleet's rates; null where no hours are known of any dock.</summary>
    /// <param name="rates">The rates.</param>
    public static StrikeRatePicture? Of(StrikeRates rates)
    {
        ArgumentNullException.ThrowIfNull(rates);
        if (rates.Fleet.All is not { Exact: var fleet }) return null;
        // By what is drawn towards the others: a dock with one strike in its first hours is not the worst of all.
        var known = rates.ByDock.Where(d => d.All is not null).OrderByDescending(d => (d.All!.Shrunk ?? d.All.Exact).Value).ThenByDescending(d => d.EngineHours).ThenBy(d => d.Name, StringComparer.Ordinal).ToList();
        if (known.Count == 0) return null;
        List<LimitRow> rows = [.. known.Take(MostRows).Select(d => Row(d, fleet.Value))];

        // A dock with few hours has limits without end: they must not press the others into a corner.
        var most = Math.Max(4 * fleet.Value, 1.5 * rows.Max(r => r.Value!.Value));
        var to = Math.Clamp(1.05 * rows.Max(r => r.High ?? r.Value!.Value), 1, Math.Max(1, most));
        var unknown = rates.ByDock.Count - known.Count;
        string?[] notes = [known.Count > MostRows ? $"{known.Count - MostRows} more with lower rates" : null, unknown > 0 ? $"no hours known of {Phrases.Count(unknown, "dock")}" : null, "bars: " + Phrases.Percent(rates.Level) + " limits"];
        return new StrikeRatePicture(
            "Strikes by dock", Sentence(known, fleet), "strikes per 1,000 engine hours, by home dock", rows, fleet.Value, $"fleet {fleet.Value:0.0}", to, string.Join("; ", notes.OfType<string>()));
    }

    private static LimitRow Row(StrikeRate dock, double fleet)
    {
        var exact = dock.All!.Exact;
        return new LimitRow(
            Phrases.Plain(dock.Name), exact.Value, exact.Low, exact.High, $"{exact.Value:0.0}: {dock.Strikes} in {dock.EngineHours:0} h", exact.Low > fleet);
    }

    private static string Sentence(List<StrikeRate> docks, Limits fleet)
    {
        string Told(StrikeRate d) => $"{Fitting.Name(Phrases.Plain(d.Name))} {d.All!.Exact.Value:0.0} ({d.All.Exact.Low:0.0} to {d.All.Exact.High:0.0})";
        var above = docks.Where(d => d.All!.Exact.Low > fleet.Value).Select(Told).ToList();
        var below = docks.Where(d => d.All!.Exact.High < fleet.Value).Select(Told).Reverse().ToList();
        var said = (above.Count, below.Count) switch
        {
            (0, 0) => "no dock stands out: they differ by no more than chance explains",
            (_, 0) => $"more at {Fitting.List(above, MostNames)}",
            (0, _) => $"fewer at {Fitting.List(below, MostNames)}",
            _ => $"more at {Fitting.List(above, MostNames)}; fewer at {Fitting.List(below, MostNames)}",
        };
        return $"The fleet strikes {fleet.Value:0.0} times per 1,000 engine hours ({fleet.Low:0.0} to {fleet.High:0.0}); {said}.";
    }
}
