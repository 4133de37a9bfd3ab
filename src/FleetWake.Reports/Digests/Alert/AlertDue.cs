using FleetWake.Logbook.Schedules;

namespace FleetWake.Reports.Digests.Alert;

/// <summary>Whether what waits is told now. Pure.</summary>
public static class AlertDue
{
    /// <summary>
    /// Whether to tell now. A severe strike and a take-off are told at once, and what waits goes along; the rest is gathered, so that a bad
    /// afternoon is one message, and not told in the quiet hours.
    /// </summary>
    /// <param name="waiting">What waits, each with since when.</param>
    /// <param name="rule">How alerts are told.</param>
    /// <param name="now">The moment.</param>
    /// <param name="zone">The clock of the quiet hours.</param>
    public static bool Of(IReadOnlyCollection<(AlertCause Cause, DateTimeOffset Since)> waiting, AlertRule rule, DateTimeOffset now, TimeZoneInfo zone)
    {
        if (waiting.Count == 0 || rule.Off) return false;
        if (waiting.Any(w => w.Cause.Urgent)) return true;
        return !rule.IsQuiet(TimeOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime)) && waiting.Min(w => w.Since) + rule.Gather <= now;
    }
}
