using FleetWake.Propulsion.Logs;

namespace FleetWake.Propulsion.Tests.Logs;

/// <summary>Logs written as text.</summary>
internal static class Logs
{
    internal static TrialLog Read(string text, LogOptions? options = null)
    {
        using var reader = new StringReader(text);
        return TrialLog.Read(reader, options ?? new LogOptions());
    }

    internal static TrialLog Lines(params string[] lines) => Read(string.Join('\n', lines));

    internal static bool Says(this TrialLog log, LogNoticeKind kind) => log.Notices.Any(notice => notice.Kind == kind);

    /// <summary>A sentence with its checksum: the exclusive-or of what stands between "$" and "*".</summary>
    internal static string Nmea(FormattableString body)
    {
        var text = FormattableString.Invariant(body);
        return $"${text}*{text.Aggregate(0, (sum, c) => sum ^ c):X2}";
    }
}
