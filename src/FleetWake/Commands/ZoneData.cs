using System.Globalization;

namespace FleetWake.Commands;

/// <summary>How old the system's time zones are. They decide when a date begins at a dock, and change several times a year.</summary>
internal static class ZoneData
{
    private const string Folder = "/usr/share/zoneinfo";
    private const string Marker = "# version ";

    /// <summary>The release, e.g. <c>2026a</c>; null where the system does not say.</summary>
    public static string? Version()
    {
        try
        {
            var compact = Path.Combine(Folder, "tzdata.zi");
            if (File.Exists(compact) && File.ReadLines(compact).FirstOrDefault() is { } line && line.StartsWith(Marker, StringComparison.Ordinal))
                return line[Marker.Length..].Trim();
            var plain = Path.Combine(Folder, "+VERSION");
            return File.Exists(plain) ? File.ReadAllText(plain).Trim() : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    /// <summary>Whether a release is of an earlier year; in the first months of a year, last year's still is the newest.</summary>
    public static bool IsOld(string version, DateTimeOffset now) =>
        version.Length >= 4 && int.TryParse(version[..4], CultureInfo.InvariantCulture, out var year) && year < now.AddMonths(-4).Year;
}
