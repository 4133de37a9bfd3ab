namespace FleetWake.Logbook.Entries;

/// <summary>The stamp of a record: who, on which device, when it happened, when it was typed and when it reached us.</summary>
/// <param name="Id">Made by the device, unique per operator; it makes a repeat harmless.</param>
/// <param name="By">Pseudonymous id of the person who told it.</param>
/// <param name="Device">Id of the device it was typed on.</param>
/// <param name="Count">The device's own counter; settles the order of two entries of one instant.</param>
/// <param name="HappenedAt">When it happened, by the device's clock, as local time with its offset.</param>
/// <param name="Zone">IANA zone of the dock, e.g. <c>Pacific/Auckland</c>.</param>
/// <param name="EnteredAt">When it was typed, by the device's clock; decides which of two amendments is the last.</param>
/// <param name="ReceivedAt">When the server took it, by the server's clock, in UTC.</param>
/// <param name="ClockAheadSeconds">How far the device's clock was measured to run ahead of the server's [s]; 0 when it was not measured or is small.</param>
/// <param name="Amends">The entry that this one replaces in full, if it is an amendment.</param>
public sealed record Entry(
    Guid Id,
    string By,
    string Device,
    long Count,
    DateTimeOffset HappenedAt,
    string Zone,
    DateTimeOffset EnteredAt,
    DateTimeOffset ReceivedAt,
    double ClockAheadSeconds,
    Guid? Amends)
{
    /// <summary>When it happened, with the measured error of the device's clock taken off, still as local time with its offset.</summary>
    public DateTimeOffset Happened() => HappenedAt.AddSeconds(-ClockAheadSeconds);

    /// <summary>The dock's calendar date on which it happened.</summary>
    public DateOnly Date() => DateOnly.FromDateTime(Happened().DateTime);

    /// <summary>When it was typed, with the measured error of the device's clock taken off.</summary>
    public DateTimeOffset Entered() => EnteredAt.AddSeconds(-ClockAheadSeconds);
}

/// <summary>The order of things: by instant, device, the device's counter and entry id; never by arrival.</summary>
public sealed class EntryOrder : IComparer<Entry>
{
    private EntryOrder()
    {
    }

    /// <summary>The one order.</summary>
    public static EntryOrder Instance { get; } = new();

    /// <inheritdoc/>
    public int Compare(Entry? x, Entry? y)
    {
        if (x is null || y is null) return (x is null ? 0 : 1) - (y is null ? 0 : 1);
        var byInstant = x.Happened().UtcTicks.CompareTo(y.Happened().UtcTicks);
        return byInstant != 0 ? byInstant : Tie(x, y);
    }

    /// <summary>Which of two amendments of one entry was typed later: that one counts.</summary>
    public static int CompareTyped(Entry x, Entry y)
    {
        var byTyped = x.Entered().UtcTicks.CompareTo(y.Entered().UtcTicks);
        return byTyped != 0 ? byTyped : Tie(x, y);
    }

    internal static int Tie(Entry x, Entry y)
    {
        var byDevice = string.CompareOrdinal(x.Device, y.Device);
        if (byDevice != 0) return byDevice;
        var byCount = x.Count.CompareTo(y.Count);
        return byCount != 0 ? byCount : x.Id.CompareTo(y.Id);
    }
}
