using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>Reads the times that logs carry; a time without a zone is taken as UTC, for only differences are used.</summary>
internal static class LogTime
{
    private static readonly DateTimeOffset s_noDate = DateTimeOffset.UnixEpoch;

    /// <summary>A date and time of ISO 8601; null when none.</summary>
    internal static DateTimeOffset? Iso(string text)
    {
        // A date without a time, or "5/4", is no time of a reading: ask for the form YYYY-MM-DD and something after it.
        var t = text.Trim();
        return t.Length >= 16 && t[4] == '-' && t[7] == '-' && DateTimeOffset.TryParse(
            t, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time)
            ? time
            : null;
    }

    /// <summary>Seconds since 1970, or milliseconds when so large that seconds would lie in the far future.</summary>
    internal static DateTimeOffset? Unix(ReadOnlySpan<char> text)
    {
        if (Numbers.Parse(text) is not { } number || number < 0) return null;
        var seconds = number > 1e11 ? number / 1000 : number; // 1e11 s lie in the year 5138
        return seconds < 1e10 ? DateTimeOffset.UnixEpoch.AddSeconds(seconds) : null;
    }

    /// <summary>A time of day hh:mm:ss or hh:mm on the first day; null when none.</summary>
    internal static DateTimeOffset? OfDay(string text) => TimeOnly.TryParseExact(
        text.Trim(), ["HH:mm:ss", "HH:mm:ss.FFFFFFF", "HH:mm", "H:mm:ss", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)
        ? s_noDate + time.ToTimeSpan()
        : null;

    /// <summary>What a logger put before a sentence: an ISO 8601 time or a Unix one, perhaps in brackets or quotes.</summary>
    internal static DateTimeOffset? InFront(ReadOnlySpan<char> text)
    {
        var t = text.Trim(" \t,;:|[]()<>\"'".AsSpan());
        if (Iso(t.ToString()) is { } iso) return iso;
        // A port's name or a direction may follow the time.
        var end = t.IndexOfAny(" \t,;|".AsSpan());
        var first = end < 0 ? t : t[..end];
        return Iso(first.ToString()) ?? (first.Length >= 10 ? Unix(first) : null);
    }

    /// <summary>hhmmss or hhmmss.sss of a sentence, as time since midnight; null when none.</summary>
    internal static TimeSpan? Nmea(string field)
    {
        if (field.Length < 6 || Numbers.Parse(field) is not { } number || field[0] is '+' or '-') return null;
        var whole = field.AsSpan(0, 6);
        if (whole.IndexOfAnyExceptInRange('0', '9') >= 0 || (field.Length > 6 && field[6] != '.')) return null;
        var (h, m) = (int.Parse(whole[..2], CultureInfo.InvariantCulture), int.Parse(whole[2..4], CultureInfo.InvariantCulture));
        var s = number % 100;
        return h < 24 && m < 60 && s < 61 ? new TimeSpan(h, m, 0) + TimeSpan.FromSeconds(s) : null; // 60 is a leap second
    }

    /// <summary>ddmmyy of a sentence; null when none. Years 80 to 99 are of the last century: receivers of then wrote logs.</summary>
    internal static DateTimeOffset? NmeaDate(string field)
    {
        if (field.Length != 6 || field.AsSpan().IndexOfAnyExceptInRange('0', '9') >= 0) return null;
        var yy = int.Parse(field.AsSpan(4), CultureInfo.InvariantCulture);
        return Date(yy >= 80 ? 1900 + yy : 2000 + yy, int.Parse(field.AsSpan(2, 2), CultureInfo.InvariantCulture), int.Parse(field.AsSpan(0, 2), CultureInfo.InvariantCulture));
    }

    internal static DateTimeOffset? Date(double? year, double? month, double? day) =>
        year is >= 1970 and <= 2199 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth((int)year, (int)month)
            ? new DateTimeOffset((int)year, (int)month, (int)day, 0, 0, 0, TimeSpan.Zero)
            : null;
}
