using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>
/// The part of a time for which an engine's hours are known: from its beginning, or the first reading after it, to its end,
/// or the last reading before it. Between readings hours are reckoned evenly by the clock.
/// </summary>
internal sealed record EngineRun
{
    private readonly MeterChain meter;
    private readonly IComparer<Entry> order;
    private readonly double begin; // [h]
    private readonly double end; // [h]

    private EngineRun(MeterChain meter, IComparer<Entry> order, Entry from, Entry to)
    {
        (this.meter, this.order, From, To) = (meter, order, from, to);
        begin = meter.At(from)?.Hours ?? 0;
        end = Math.Max(begin, meter.At(to)?.Hours ?? begin);
    }

    /// <summary>Where the known hours begin.</summary>
    public Entry From { get; }

    /// <summary>Where they end.</summary>
    public Entry To { get; }

    /// <summary>Engine hours from begin to end [h], above zero.</summary>
    public double Hours => end - begin;

    /// <summary>The known part of a time; null when no hour of it is known to have run.</summary>
    /// <param name="meter">The engine's hours; null when it has no meter on record.</param>
    /// <param name="order">The order of things.</param>
    /// <param name="from">The entry that began the time.</param>
    /// <param name="to">The entry that ended it; null while it lasts.</param>
    public static EngineRun? Of(MeterChain? meter, IComparer<Entry> order, Entry from, Entry? to)
    {
        if (meter is null || meter.Readings.Count == 0) return null;
        var last = meter.Readings[^1].Entry;
        var first = meter.At(from) is not null ? from : meter.Readings[0].Entry;
        var until = to is null || order.Compare(to, last) > 0 ? last : to;
        if (order.Compare(first, until) >= 0) return null;
        var run = new EngineRun(meter, order, first, until);
        return run.Hours > 0 ? run : null;
    }

    /// <summary>Whether an entry lies in the known part, its two ends included.</summary>
    public bool Holds(Entry entry) => order.Compare(From, entry) <= 0 && order.Compare(entry, To) <= 0;

    /// <summary>Hours of it that ran in a home [h], zero or more.</summary>
    public double In(HomeSpan home) => Math.Max(0, (home.To is null ? end : At(home.To)) - (home.From is null ? begin : At(home.From)));

    private double At(Entry entry) =>
        order.Compare(entry, From) <= 0 ? begin
        : order.Compare(entry, To) >= 0 ? end
        : Math.Clamp(meter.At(entry)?.Hours ?? begin, begin, end);
}
