using FleetWake.Logbook.Schedules;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using CultureInfo = System.Globalization.CultureInfo;

namespace FleetWake.Web.Office.Rules;

/// <summary>Reads holidays out of a calendar file (RFC 5545): its all-day events, repeated ones over the years ahead. Their names are not kept.</summary>
internal static class HolidayFile
{
    /// <summary>Largest file that is taken [bytes].</summary>
    public const int MostBytes = 512 * 1024;

    private const int YearsAhead = 3;
    private const int LongestDays = 31;

    /// <summary>The dates from a day on, in order; null when it is no calendar.</summary>
    public static IReadOnlyList<DateOnly>? Read(string text, DateOnly from)
    {
        try
        {
            if (Calendar.Load(text) is not { } calendar) return null;
            var until = from.AddYears(YearsAhead);
            var begin = new CalDateTime(from.AddDays(-LongestDays).Year, from.AddDays(-LongestDays).Month, from.AddDays(-LongestDays).Day);
            var dates = new SortedSet<DateOnly>();
            foreach (var happening in calendar.GetOccurrences<CalendarEvent>(begin).TakeWhile(o => Day(o.Period.StartTime) <= until).Take(10_000))
            {
                if (happening.Period.StartTime.HasTime) continue;
                var first = Day(happening.Period.StartTime);
                // The end of an all-day event is the day after it; one without an end is of one day.
                var end = happening.Period.EffectiveEndTime is { } last && Day(last) > first ? Day(last) : first.AddDays(1);
                for (var day = first; day < end && day < first.AddDays(LongestDays); day = day.AddDays(1))
                    if (day >= from && day <= until) dates.Add(day);
            }

            return [.. dates.Take(SetHolidays.Most)];
        }
#pragma warning disable CA1031 // A file from anywhere may fail a reader in any way; each of them means that it is no calendar.
        catch (Exception)
#pragma warning restore CA1031
        {
            return null;
        }
    }

    /// <summary>Dates as typed, one a line or parted by commas and spaces.</summary>
    public static IReadOnlyList<string> Typed(string? text) =>
        text is null ? [] : [.. text.Split([' ', ',', ';', '\r', '\n', '\t'], StringSplitOptions.RemoveEmptyEntries)];

    /// <summary>A date as a record has it.</summary>
    public static string Written(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateOnly Day(CalDateTime time) => new(time.Year, time.Month, time.Day);
}
