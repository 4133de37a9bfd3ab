using FleetWake.Logbook.Entries;

namespace FleetWake.Demo;

/// <summary>Counts each device's records as they were typed and sends them in batches.</summary>
internal static class Outbox
{
    private const int MostAtOnce = 100;

    /// <summary>All batches, in the order in which the server took them.</summary>
    public static IReadOnlyList<DeviceBatch> Batches(Notebook log) =>
    [
        .. log.Written
            .GroupBy(t => t.Pen.Device)
            .SelectMany(d => OfDevice(d.Key, [.. d.OrderBy(t => t.TypedAt)], log))
            .OrderBy(b => b.ReceivedAt),
    ];

    private static IEnumerable<DeviceBatch> OfDevice(Device device, List<Typed> typed, Notebook log)
    {
        var again = new List<ICommand>();
        var sends = typed.Select((t, i) => (Typed: t, Record: t.Make(StampOf(t, i + 1)))).GroupBy(x => Sending(device, x.Typed.TypedAt, log.Days));
        foreach (var send in sends)
        {
            var records = again.Concat(send.Select(x => x.Record)).ToList();
            again = [.. send.Where(x => log.SentTwice.Contains(x.Typed.Id)).Select(x => x.Record)];
            if (send.Key == BackOnTheAir(device, log.Days)) records.Reverse();
            foreach (var (part, i) in records.Chunk(MostAtOnce).Select((part, i) => (part, i)))
            {
                var received = send.Key.AddSeconds(2 * i);
                yield return new DeviceBatch(device.Id, received + device.ClockAhead, received, part);
            }
        }
    }

    /// <summary>The stamp, with times as the device's own clock showed them.</summary>
    private static Stamp StampOf(Typed typed, long count)
    {
        var ahead = typed.Pen.Device.ClockAhead;
        var entered = typed.Amends is null && typed.TypedAt == typed.Happened ? null : DockCalendar.Text(typed.TypedAt + ahead);
        return new Stamp(typed.Id, typed.Pen.By, DockCalendar.Text(typed.Happened + ahead), DockCalendar.ZoneName, count, entered, typed.Amends);
    }

    /// <summary>Sunday evening; the evening before the showing at the latest; later for a phone that could not send.</summary>
    private static DateTimeOffset Sending(Device device, DateTimeOffset typed, DockCalendar days)
    {
        var day = DateOnly.FromDateTime(typed.DateTime);
        if (BackOnTheAir(device, days) is { } back && day >= days.DaysAgo(device.SilentFromDaysAgo) && typed <= back) return back;
        var sunday = day.AddDays((7 - (int)day.DayOfWeek) % 7);
        var evening = sunday < days.Today ? sunday : days.DaysAgo(1);
        return DockCalendar.At(evening, 19, device.Minute);
    }

    private static DateTimeOffset? BackOnTheAir(Device device, DockCalendar days) =>
        device.SilentFromDaysAgo == 0 ? null : DockCalendar.At(days.DaysAgo(device.SilentToDaysAgo), 12, device.Minute);
}
