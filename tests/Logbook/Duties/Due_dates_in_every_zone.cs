using FleetWake.Logbook.Findings;
using NodaTime;

namespace FleetWake.Logbook.Tests.Duties;

/// <summary>
/// A due date is the dock's calendar: the date on which the look happened there, and whole months on. Held against
/// NodaTime's calendar for every zone of this machine, at each end of a month and each change of the clocks of twenty years.
/// </summary>
public class Due_dates_in_every_zone
{
    private static readonly Arrival s_arrived = new("phone-1", new DateTimeOffset(2042, 1, 1, 0, 0, 0, TimeSpan.Zero), null);

    public static IReadOnlyList<TimeZoneInfo> Zones { get; } =
        [.. TimeZoneInfo.GetSystemTimeZones().Where(z => z.HasIanaId && new Check().Zone(z.Id, "/zone") is not null)];

    [Fact]
    public void There_are_zones_to_try() => Assert.True(Zones.Count > 300, $"{Zones.Count} zones: is tzdata installed?");

    [Fact]
    public void At_each_end_of_a_month_the_due_date_is_clamped_from_the_day_of_the_look() => Parallel.ForEach(Zones, zone =>
    {
        var last = DateOnly.MinValue;
        for (var day = new DateOnly(2020, 1, 1); day.Year <= 2040; day = day.AddMonths(1))
        {
            foreach (var local in (DateTime[])[day.ToDateTime(new TimeOnly(0, 30)).AddMinutes(-60), day.ToDateTime(new TimeOnly(0, 30))])
            {
                // An hour that the clocks leave out did not happen; of one that comes twice, either is of this date.
                var at = new DateTimeOffset(local, zone.GetUtcOffset(local));
                if (TimeZoneInfo.ConvertTime(at, zone).DateTime != local) continue;
                var due = Due(zone, at);
                Assert.Equal(LocalDate.FromDateTime(local).PlusMonths(Outlook.InspectionMonths).ToDateOnly(), due);
                Assert.True(due >= last, $"{zone.Id} {local}: {due} after {last}");
                last = due;
            }
        }
    });

    [Fact]
    public void Over_each_change_of_the_clocks_a_later_look_is_never_due_earlier() => Parallel.ForEach(Zones, zone =>
    {
        foreach (var noon in Changes(zone))
        {
            var last = DateOnly.MinValue;
            for (var at = noon.AddHours(-26); at <= noon.AddHours(2); at = at.AddHours(1))
            {
                var due = Due(zone, at);
                Assert.Equal(LocalDate.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime).PlusMonths(Outlook.InspectionMonths).ToDateOnly(), due);

                // A zone that leaves a whole day out, or sets its clocks back over midnight, may repeat a date: by one day at most.
                Assert.True(due >= last.AddDays(last == DateOnly.MinValue ? 0 : -1), $"{zone.Id} {at}: {due} after {last}");
                last = due;
            }
        }
    });

    /// <summary>Days, by their noon UTC, on which a zone's offset differs from the day before.</summary>
    private static IEnumerable<DateTimeOffset> Changes(TimeZoneInfo zone)
    {
        var before = zone.GetUtcOffset(new DateTimeOffset(2019, 12, 31, 12, 0, 0, TimeSpan.Zero));
        for (var noon = new DateTimeOffset(2020, 1, 1, 12, 0, 0, TimeSpan.Zero); noon.Year <= 2040; noon = noon.AddDays(1))
        {
            var offset = zone.GetUtcOffset(noon);
            if (offset != before) yield return noon;
            before = offset;
        }
    }

    /// <summary>The due date of a look at an instant, through the door that every record comes by.</summary>
    private static DateOnly Due(TimeZoneInfo zone, DateTimeOffset at)
    {
        var stamp = new Stamp(Dock.Id(zone.Id), "mech-1", at.UtcDateTime.ToString("yyyy-MM-ddTHH:mm:ssZ", System.Globalization.CultureInfo.InvariantCulture), zone.Id);
        var entry = new Check().Entry(stamp, s_arrived);
        Assert.NotNull(entry);
        return Outlook.InspectionDue(entry.Date());
    }
}
