using FleetWake.Logbook.Engines;
using FleetWake.Statistics.Use;

namespace FleetWake.Logbook.Findings;

/// <summary>How much an engine runs, as its meter and its fleet's meters tell.</summary>
/// <param name="Posterior">What is held possible of its use.</param>
/// <param name="HoursNow">The last reading [h]; null without one.</param>
/// <param name="ReadOn">Day of that reading.</param>
internal sealed record MeterUse(UsePosterior Posterior, double? HoursNow, DateOnly? ReadOn)
{
    /// <summary>Readings older than this before the last one tell of another life [a].</summary>
    private const int Years = 3;

    public static MeterUse Of(MeterChain? meter, SeasonOfUse season)
    {
        var last = meter?.Readings.LastOrDefault();
        return new(UsePosterior.Of(season, Stretches(meter)), last?.Hours, last?.Entry.Date());
    }

    /// <summary>Hours run between readings of different days, of the last three years before the last one.</summary>
    public static IReadOnlyList<UseStretch> Stretches(MeterChain? meter)
    {
        if (meter is null || meter.Readings.Count < 2) return [];
        var last = meter.Readings[^1].Entry.Date();
        var since = last.Year > Years ? last.AddYears(-Years) : DateOnly.MinValue;
        // The last reading of a day stands for it: two of one visit say nothing of use. Over a gap between two meters nobody knows the hours.
        var days = meter.Readings.GroupBy(r => r.Entry.Date()).Select(d => (On: d.Key, Hours: d.Max(r => r.Hours), Gap: d.Any(r => r.Bridged))).Where(d => d.On >= since).OrderBy(d => d.On).ToList();
        return [.. days.Zip(days.Skip(1)).Where(p => !p.Second.Gap).Select(p => new UseStretch(p.First.On, p.Second.On, Math.Max(0, p.Second.Hours - p.First.Hours)))];
    }

    /// <summary>Engine hours since the last usable trial [h].</summary>
    public double HoursSince(WearDrift? drift) => HoursNow is { } now && drift is not null ? Math.Max(0, now - drift.LastTrialHours) : 0;

    /// <summary>A forecast in hours as dates; null where there is none, or no reading to count from.</summary>
    public BandExitDates? DatesOf(BandExit exit, WearDrift? drift)
    {
        if (exit.State != BandExitState.Forecast && exit is not { State: BandExitState.BeyondHorizon, EarliestHours: not null }) return null;
        if (drift is null || ReadOn is not { } day) return null;
        var of = exit.Edge == BandEdge.Bottom ? drift.Found.ExitBelow! : drift.Found.Exit!;
        var dates = ExitDate.Of(of.ChanceWithin, HoursSince(drift), day, Posterior);
        return new(dates.Earliest, dates.Median, dates.Latest, dates.Level, Posterior.MeanHours(day, day.AddYears(1)) / 12, day);
    }
}
