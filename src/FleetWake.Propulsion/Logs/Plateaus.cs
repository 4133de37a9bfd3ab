namespace FleetWake.Propulsion.Logs;

/// <summary>
/// Finds the runs in a recording: first where the RPM holds, within that where speed and course hold, and of that the part
/// in which the speed had settled.
/// </summary>
public static class Plateaus
{
    /// <summary>Finds every steady stretch, wide open or not, in the order of time.</summary>
    /// <param name="log">A log; one without RPM is searched by speed and course alone.</param>
    /// <param name="rules">When a stretch counts.</param>
    /// <returns>The stretches; none when nothing held long enough, or when the log has typed runs only.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A rule is outside its range; it is named.</exception>
    public static IReadOnlyList<Plateau> Find(TrialLog log, PlateauRules rules)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(rules);
        rules.Check();
        var rates = new RateSeries(log.Rates);
        var track = new TrackSeries(log.Track);
        var found = new List<Plateau>();
        if (rates.Count == 0) found.AddRange(track.Steady(DateTimeOffset.MinValue, DateTimeOffset.MaxValue, rules).Select(w => Of(rates, track, w)));
        else foreach (var w in rates.Steady(rules))
        {
            if (track.Count == 0) found.Add(Of(rates, track, w));
            else found.AddRange(track.Steady(w.From, w.To, rules).Select(s => Of(rates, track, s)));
        }

        return MarkWideOpen(found, rules);
    }

    private static Plateau Of(RateSeries rates, TrackSeries track, (DateTimeOffset From, DateTimeOffset To) w)
    {
        var rpm = rates.Over(w.From, w.To);
        var (speed, course) = track.Over(w.From, w.To);
        return new Plateau(
            w.From, w.To - w.From,
            rpm is { } n ? EngineRate.FromRevolutionsPerMinute(n.Mean) : null, rpm?.Scatter,
            speed is { } v ? Speed.FromKnots(v.Mean) : null, speed?.Scatter,
            course, WideOpen: false);
    }

    private static Plateau[] MarkWideOpen(List<Plateau> found, PlateauRules rules)
    {
        var topRpm = found.Max(p => p.Engine?.RevolutionsPerMinute);
        var topKnots = found.Max(p => p.Speed?.Knots);
        return [.. found.Select(p => p with
        {
            WideOpen = p.Engine is { } n
                ? n.RevolutionsPerMinute >= (1 - rules.WideOpenRpm) * topRpm
                : topRpm is null && p.Speed is { } v && v.Knots >= (1 - rules.WideOpenSpeed) * topKnots,
        })];
    }
}
