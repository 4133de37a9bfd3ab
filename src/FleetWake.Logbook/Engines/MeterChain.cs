using System.Text.Json.Serialization;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>
/// An engine's hours as a chain of readings that can all be true: they never run backwards, save that a later one may
/// have been read in whole hours, and never faster than the clock. Readings that do not fit the longest such chain are set aside, and stay in the record.
/// A replaced meter begins a chain of its own, and the engine's hours go on over it.
/// </summary>
/// <param name="Readings">The credible readings, in order.</param>
/// <param name="SetAside">The others.</param>
public sealed record MeterChain(IReadOnlyList<MeterPoint> Readings, IReadOnlyList<MeterPoint> SetAside)
{
    /// <summary>Meters show whole or tenth hours, and entries whole minutes: two readings of one visit may differ by this much [h].</summary>
    private const double RoundingHours = 1;

    /// <summary>The order of things, where corrections were settled.</summary>
    [JsonIgnore]
    public IComparer<Entry> Order { get; private init; } = EntryOrder.Instance;

    /// <summary>Builds the chain from readings in any order, over each meter the engine had.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="replacements">Where one meter ends and the next begins.</param>
    /// <param name="order">The order of things, where corrections were settled.</param>
    /// <param name="believed">Entries of readings that somebody says are right: what does not fit them is set aside instead.</param>
    public static MeterChain Of(
        IEnumerable<MeterPoint> readings, IEnumerable<MeterReplaced>? replacements = null, IComparer<Entry>? order = null, IReadOnlySet<Guid>? believed = null)
    {
        order ??= EntryOrder.Instance;
        var (kept, setAside) = (new List<MeterPoint>(), new List<MeterPoint>());
        foreach (var meter in Meters([.. readings], [.. (replacements ?? []).OrderBy(r => r.Entry, order)], order))
        {
            var chain = Longest(meter, p => believed?.Contains(p.Entry.Id) == true);

            // Both meters were read at one moment, or the hours that ran between their readings are missing.
            var before = kept.LastOrDefault();
            var offset = before is null || chain.Count == 0 ? 0 : before.Hours - chain[0].Shown;
            var gap = before is not null && chain.Count > 0 && before.Entry.Id != chain[0].Entry.Id;
            kept.AddRange(chain.Select((p, i) => p with { Hours = p.Shown + offset, Bridged = gap && i == 0 }));
            setAside.AddRange(meter.Except(chain, ReferenceEqualityComparer.Instance).Cast<MeterPoint>().Select(p => p with { Hours = p.Shown + offset }));
        }

        return new MeterChain(kept, setAside) { Order = order };
    }

    /// <summary>Hours at the moment of an entry; null before the first reading.</summary>
    public HoursAt? At(Entry entry)
    {
        MeterPoint? earlier = null;
        foreach (var reading in Readings)
        {
            if (reading.Entry.Id == entry.Id) return new HoursAt(reading.Hours, reading.Bridged);
            if (Order.Compare(reading.Entry, entry) > 0)
                return earlier is null ? null : new HoursAt(Between(earlier, reading, entry), true);
            earlier = reading;
        }

        return earlier is null ? null : new HoursAt(earlier.Hours, true);
    }

    /// <summary>The readings of each meter in turn, in order. What both meters showed at a replacement are readings of theirs.</summary>
    private static IEnumerable<MeterPoint[]> Meters(IReadOnlyList<MeterPoint> readings, IReadOnlyList<MeterReplaced> replacements, IComparer<Entry> order)
    {
        for (var i = 0; i <= replacements.Count; i++)
        {
            var began = i == 0 ? null : replacements[i - 1];
            var ended = i == replacements.Count ? null : replacements[i];
            var own = readings
                .Where(r => began is null || order.Compare(r.Entry, began.Entry) > 0)
                .Where(r => ended is null || order.Compare(r.Entry, ended.Entry) < 0)
                .OrderBy(r => r.Entry, order);
            MeterPoint[] first = began is null ? [] : [new MeterPoint(began.Entry, began.NewHours)];
            MeterPoint[] last = ended?.OldHours is { } old ? [new MeterPoint(ended.Entry, old)] : [];
            yield return [.. first, .. own, .. last];
        }
    }

    /// <summary>
    /// The longest chain that can be true, of those that hold the most readings which are believed; of two of one length
    /// the one that ends later, and the earlier ways to its end.
    /// </summary>
    private static List<MeterPoint> Longest(MeterPoint[] points, Func<MeterPoint, bool> believed)
    {
        // A believed reading counts for more than all the others together.
        int Weight(MeterPoint point) => believed(point) ? points.Length + 1 : 1;
        var length = new int[points.Length];
        var before = new int[points.Length];
        var last = -1;
        for (var i = 0; i < points.Length; i++)
        {
            var weight = Weight(points[i]);
            length[i] = weight;
            before[i] = -1;
            for (var j = 0; j < i; j++)
            {
                if (length[j] + weight > length[i] && Follows(points[j], points[i])) (length[i], before[i]) = (length[j] + weight, j);
            }

            if (last < 0 || length[i] >= length[last]) last = i;
        }

        var chain = new List<MeterPoint>();
        for (var i = last; i >= 0; i = before[i]) chain.Add(points[i]);
        chain.Reverse();
        return chain;
    }

    private static bool Follows(MeterPoint earlier, MeterPoint later)
    {
        var run = later.Shown - earlier.Shown;
        var clock = (later.Entry.Happened() - earlier.Entry.Happened()).TotalHours;
        return later.Shown >= Math.Floor(earlier.Shown) && run <= clock + RoundingHours;
    }

    private static double Between(MeterPoint earlier, MeterPoint later, Entry at)
    {
        var whole = (later.Entry.Happened() - earlier.Entry.Happened()).TotalHours;
        var part = (at.Happened() - earlier.Entry.Happened()).TotalHours;
        return whole <= 0 ? earlier.Hours : earlier.Hours + ((later.Hours - earlier.Hours) * part / whole);
    }
}
