using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Operators;

/// <summary>The stamp of a fact that the program itself records, or somebody at an office page, made at the rim where time and new ids come from.</summary>
internal static class ProgramEntry
{
    private const string Program = "fleetwake";

    public static Entry At(DateTimeOffset now, string zone, string? by = null)
    {
        var local = TimeZoneInfo.ConvertTime(now, TimeZoneInfo.FindSystemTimeZoneById(zone));
        return new Entry(Guid.CreateVersion7(now), by ?? Program, by is null ? "program" : "office", 0, local, zone, local, now, 0, null);
    }
}
