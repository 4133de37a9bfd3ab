using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace FleetWake.Reports.Digests.DueList;

/// <summary>What is due as a calendar (RFC 5545): the one that calendar programs subscribe to, and the one that goes along with a due list. Both name an event alike.</summary>
public static class DueCalendarFile
{
    /// <summary>Writes a calendar of all-day events, each on the day its duty is due.</summary>
    /// <param name="operator">Id of the operator.</param>
    /// <param name="name">Its name for people.</param>
    /// <param name="zone">IANA zone of the operator's office, which calendar programs show; the events are dates, and need none.</param>
    /// <param name="due">What is due.</param>
    /// <param name="now">When it is written.</param>
    /// <param name="dock">Names docks; ids stand there when null.</param>
    /// <param name="site">Address of the office's pages, to which events lead; they lead nowhere when null.</param>
    /// <param name="person">Names people; ids stand there when null.</param>
    public static string Write(
        string @operator, string name, string? zone, IEnumerable<DueItem> due, DateTimeOffset now, Func<string, string>? dock = null, string? site = null, Func<string, string>? person = null)
    {
        var calendar = new Calendar { ProductId = "-//FleetWake//Due dates//EN", Method = "PUBLISH" };
        calendar.AddProperty("X-WR-CALNAME", $"{name}: due on propellers");
        calendar.AddProperty("REFRESH-INTERVAL;VALUE=DURATION", "PT1H");
        if (zone is not null)
        {
            calendar.AddProperty("X-WR-TIMEZONE", zone);
            calendar.AddTimeZone(VTimeZone.FromDateTimeZone(zone, now.UtcDateTime.AddYears(-1), includeHistoricalData: false));
        }

        foreach (var (item, uid) in due.Select(d => (Item: d, Uid: Uid(@operator, d))).OrderBy(d => d.Item.DueOn).ThenBy(d => d.Uid, StringComparer.Ordinal))
            calendar.Events.Add(Event(item, uid, now, dock, site, person));
        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }

    private static CalendarEvent Event(DueItem item, string uid, DateTimeOffset now, Func<string, string>? dock, string? site, Func<string, string>? person)
    {
        var place = item.Position is { } p and not Logbook.Position.Single ? $" ({Words.Prose(p)})" : "";
        var taken = item.TakenBy is { } by ? $"\nTaken by {person?.Invoke(by) ?? by}." : "";

        // What is overdue is work of today: on its old day nobody would see it.
        var on = item.Overdue() ? item.DueOn.AddDays(item.DaysOverdue) : item.DueOn;
        return new CalendarEvent
        {
            Uid = uid,
            DtStamp = new CalDateTime(now.UtcDateTime),
            Start = new CalDateTime(on),
            End = new CalDateTime(on.AddDays(1)),
            Summary = $"{(item.Overdue() ? $"Overdue since {item.DueOn:yyyy-MM-dd}: " : "")}{item.BoatName}{place}: {item.What}",
            Description = $"{item.Why}{taken}\nThe owner's manual and a licensed technician always win.",
            Location = dock?.Invoke(item.Dock) ?? item.Dock,
            Url = site is null ? null : new Uri($"{site}/office/boats/{item.Boat}"),
            Transparency = TransparencyType.Transparent,
        };
    }

    /// <summary>
    /// The same duty keeps its id while its date moves, so that a calendar moves the event. Strikes are due one by one; a
    /// prop and an engine may both bring the same strike to a boat, and only the words tell those apart. Ids are the
    /// operator's own, and one calendar program may read those of several.
    /// </summary>
    private static string Uid(string @operator, DueItem item)
    {
        var position = item.Position is { } p ? Words.Of(p) : "boat";
        var strike = item.Strike is { } entry ? $".{entry}.{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(item.Why)))[..8]}" : "";
        return $"{@operator}.{item.Boat}.{position}.{item.RuleId}{strike}@fleetwake";
    }
}
