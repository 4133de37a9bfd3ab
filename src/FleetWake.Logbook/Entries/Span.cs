namespace FleetWake.Logbook.Entries;

/// <summary>A span of time between two entries: it holds its first and not its last.</summary>
public static class Span
{
    /// <summary>Whether an entry lies in the span.</summary>
    /// <param name="order">The order of things, in which a corrected record keeps its place.</param>
    /// <param name="from">The first entry.</param>
    /// <param name="to">The last entry; null while the span is open.</param>
    /// <param name="entry">The entry asked about.</param>
    public static bool Holds(IComparer<Entry> order, Entry from, Entry? to, Entry entry) =>
        order.Compare(from, entry) <= 0 && (to is null || order.Compare(entry, to) < 0);

    /// <summary>Whether two spans share some time. Spans that meet within one instant do not: docks write whole minutes.</summary>
    public static bool Overlap(Entry from1, Entry? to1, Entry from2, Entry? to2) =>
        (to1 is null || from2.Happened() < to1.Happened()) && (to2 is null || from1.Happened() < to2.Happened());
}
