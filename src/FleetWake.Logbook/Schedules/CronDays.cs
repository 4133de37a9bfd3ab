using System.Globalization;

namespace FleetWake.Logbook.Schedules;

/// <summary>
/// Days and time of day by a cron line as Quartz writes it: second, minute, hour, day of the month, month, day of the week, and a year if
/// wanted. Second, minute and hour are one number each, for a digest goes out once a day at the most, and then a clock that is set forward
/// or back costs nothing: the time is that of the wall, as with every other schedule.
/// </summary>
public sealed record CronDays
{
    /// <summary>How far two days of a line may lie apart at the most [years]: the 29th of February comes after eight years where a century leaves it out.</summary>
    public const int FarthestYears = 8;

    private static readonly string[] Months = ["JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"];
    private static readonly string[] Weekdays = ["SUN", "MON", "TUE", "WED", "THU", "FRI", "SAT"];

    private readonly IReadOnlyList<Func<DateOnly, bool>> daysOfMonth;
    private readonly IReadOnlyList<Func<DateOnly, bool>> daysOfWeek;
    private readonly IReadOnlySet<int> months;
    private readonly IReadOnlySet<int>? years;

    private CronDays(string line, TimeOnly time, IReadOnlyList<Func<DateOnly, bool>> daysOfMonth, IReadOnlySet<int> months, IReadOnlyList<Func<DateOnly, bool>> daysOfWeek, IReadOnlySet<int>? years) =>
        (Line, Time, this.daysOfMonth, this.months, this.daysOfWeek, this.years) = (line, time, daysOfMonth, months, daysOfWeek, years);

    /// <summary>The line as written.</summary>
    public string Line { get; }

    /// <summary>The time of day.</summary>
    public TimeOnly Time { get; }

    /// <summary>Whether it names a day.</summary>
    public bool Holds(DateOnly day) =>
        months.Contains(day.Month) && (years is null || years.Contains(day.Year))
        && (daysOfMonth.Count == 0 || daysOfMonth.Any(d => d(day))) && (daysOfWeek.Count == 0 || daysOfWeek.Any(d => d(day)));

    /// <summary>The first day that it names, from a day on and within <see cref="FarthestYears"/>; null when it names none.</summary>
    public DateOnly? FirstFrom(DateOnly from)
    {
        for (var (day, last) = (from, from.AddYears(FarthestYears)); day <= last; day = day.AddDays(1))
            if (Holds(day)) return day;
        return null;
    }

    /// <summary>Reads a line; null with the reason when it cannot be taken.</summary>
    public static CronDays? Read(string line, out string? why)
    {
        try
        {
            why = null;
            return Read(line);
        }
        catch (FormatException e)
        {
            why = e.Message;
            return null;
        }
    }

    private static CronDays Read(string line)
    {
        var fields = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (line.Length > 80) throw new FormatException("a line of at most 80 characters");
        if (fields.Length is not (6 or 7)) throw new FormatException("six or seven fields: second, minute, hour, day of the month, month, day of the week, year; e.g. 0 30 6 ? * MON-FRI");
        if (fields[0] != "0") throw new FormatException("the second is 0");
        var time = new TimeOnly(One(fields[2], 23, "hour"), One(fields[1], 59, "minute"));
        var (dom, dow) = (fields[3].ToUpperInvariant(), fields[5].ToUpperInvariant());
        if ((dom == "?") == (dow == "?")) throw new FormatException("just one of day of the month and day of the week is ?");
        return new CronDays(
            string.Join(' ', fields), time,
            dom is "?" ? [] : [.. dom.Split(',').Select(DayOfMonth)],
            Set(fields[4].ToUpperInvariant(), 1, 12, Months, "month"),
            dow is "?" ? [] : [.. dow.Split(',').Select(DayOfWeek)],
            fields.Length == 7 ? Set(fields[6], 1970, 2199, [], "year") : null);
    }

    private static int One(string field, int most, string what) =>
        int.TryParse(field, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n <= most ? n : throw new FormatException($"the {what} is one number from 0 to {most}: a digest goes out once a day at the most");

    private static Func<DateOnly, bool> DayOfMonth(string part)
    {
        if (part == "L") return d => d.Day == Last(d);
        if (part == "LW") return d => d.Day == Nearest(d, Last(d));
        if (part.StartsWith("L-", StringComparison.Ordinal) && Number(part[2..], 1, 30, [], "day of the month") is var back) return d => d.Day == Last(d) - back;
        if (part.EndsWith('W') && Number(part[..^1], 1, 31, [], "day of the month") is var near) return d => near <= Last(d) && d.Day == Nearest(d, near);
        var days = Set(part, 1, 31, [], "day of the month");
        return d => days.Contains(d.Day);
    }

    private static Func<DateOnly, bool> DayOfWeek(string part)
    {
        if (part == "L") return d => d.DayOfWeek == System.DayOfWeek.Saturday;
        if (part.EndsWith('L') && Number(part[..^1], 1, 7, Weekdays, "day of the week") is var last) return d => (int)d.DayOfWeek + 1 == last && d.Day > Last(d) - 7;
        if (part.Split('#') is [var day, var nth] && Number(day, 1, 7, Weekdays, "day of the week") is var on && Number(nth, 1, 5, [], "number of the week") is var n)
            return d => (int)d.DayOfWeek + 1 == on && (d.Day + 6) / 7 == n;
        var days = Set(part, 1, 7, Weekdays, "day of the week");
        return d => days.Contains((int)d.DayOfWeek + 1);
    }

    private static HashSet<int> Set(string field, int least, int most, string[] names, string what)
    {
        var set = new HashSet<int>();
        foreach (var part in field.Split(','))
        {
            var (range, step) = part.Split('/') switch
            {
                [var all] => (all, 1),
                [var all, var by] => (all, Number(by, 1, most - least + 1, [], $"step of the {what}")),
                _ => throw new FormatException($"\"{part}\" is no {what}"),
            };
            var (from, to) = range == "*" ? (least, most)
                : range.Split('-') is [var a, var b] ? (Number(a, least, most, names, what), Number(b, least, most, names, what))
                : Number(range, least, most, names, what) is var one && part.Contains('/', StringComparison.Ordinal) ? (one, most) : (one, one);

            // FRI-MON goes over the end of the week.
            var length = (to >= from ? to : to + most - least + 1) - from;
            for (var n = 0; n <= length; n += step) set.Add(from + n > most ? from + n - (most - least + 1) : from + n);
        }

        return set;
    }

    private static int Number(string text, int least, int most, string[] names, string what)
    {
        var named = Array.IndexOf(names, text);
        if (named >= 0) return named + 1;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n >= least && n <= most ? n : throw new FormatException($"\"{text}\" is no {what}: give {least} to {most}");
    }

    private static int Last(DateOnly day) => DateTime.DaysInMonth(day.Year, day.Month);

    /// <summary>The working day nearest to a day, in the same month.</summary>
    private static int Nearest(DateOnly month, int day) => new DateOnly(month.Year, month.Month, day).DayOfWeek switch
    {
        System.DayOfWeek.Saturday => day == 1 ? 3 : day - 1,
        System.DayOfWeek.Sunday => day == Last(month) ? day - 2 : day + 1,
        _ => day,
    };
}
