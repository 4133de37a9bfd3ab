using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>One reading of an engine's hour meter.</summary>
/// <param name="Entry">The entry it came with.</param>
/// <param name="Hours">What the meter showed [h].</param>
public sealed record MeterPoint(Entry Entry, double Hours);

/// <summary>Engine hours at some moment.</summary>
/// <param name="Hours">Hours [h].</param>
/// <param name="Bridged">Reckoned between two readings, or carried on from the last, rather than read.</param>
public readonly record struct HoursAt(double Hours, bool Bridged);

/// <summary>
/// An engine's hours as a chain of readings that can all be true: they never run backwards, save that a later one may
/// have been read in whole hours, and never faster than the clock. Readings that do not fit the longest such chain are set aside, and stay in the record.
/// </summary>
/// <param name="Readings">The credible readings, in order.</param>
/// <param name="SetAside">The others.</param>
public sealed record MeterChain(IReadOnlyList<MeterPoint> Readings, IReadOnlyList<MeterPoint> SetAside)
{
    /// <summary>Meters show whole or tenth hours, and entries whole minutes: two readings of one visit may differ by this much [h].</summary>
    private const double RoundingHours = 1;

    /// <summary>Builds the chain from readings in any order.</summary>
    public static MeterChain Of(IEnumerable<MeterPoint> readings)
    {
        var points = readings.OrderBy(r => r.Entry, EntryOrder.Instance).ToArray();
        var length = new int[points.Length];
        var before = new int[points.Length];
        var last = -1;
        for (var i = 0; i < points.Length; i++)
        {
            length[i] = 1;
            before[i] = -1;
            for (var j = 0; j < i; j++)
            {
                if (length[j] + 1 > length[i] && Follows(points[j], points[i])) (length[i], before[i]) = (length[j] + 1, j);
            }

            if (last < 0 || length[i] >= length[last]) last = i;
        }

        var kept = new HashSet<int>();
        for (var i = last; i >= 0; i = before[i]) kept.Add(i);
        return new MeterChain(
            [.. points.Where((_, i) => kept.Contains(i))],
            [.. points.Where((_, i) => !kept.Contains(i))]);
    }

    /// <summary>Hours at the moment of an entry; null before the first reading.</summary>
    public HoursAt? At(Entry entry)
    {
        MeterPoint? earlier = null;
        foreach (var reading in Readings)
        {
            if (reading.Entry.Id == entry.Id) return new HoursAt(reading.Hours, false);
            if (EntryOrder.Instance.Compare(reading.Entry, entry) > 0)
                return earlier is null ? null : new HoursAt(Between(earlier, reading, entry), true);
            earlier = reading;
        }

        return earlier is null ? null : new HoursAt(earlier.Hours, true);
    }

    private static bool Follows(MeterPoint earlier, MeterPoint later)
    {
        var run = later.Hours - earlier.Hours;
        var clock = (later.Entry.Happened() - earlier.Entry.Happened()).TotalHours;
        return later.Hours >= Math.Floor(earlier.Hours) && run <= clock + RoundingHours;
    }

    private static double Between(MeterPoint earlier, MeterPoint later, Entry at)
    {
        var whole = (later.Entry.Happened() - earlier.Entry.Happened()).TotalHours;
        var part = (at.Happened() - earlier.Entry.Happened()).TotalHours;
        return whole <= 0 ? earlier.Hours : earlier.Hours + ((later.Hours - earlier.Hours) * part / whole);
    }
}
