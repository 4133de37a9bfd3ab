using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Operators;

/// <summary>The stamp of a fact that the program itself records, made at the rim where time and new ids come from.</summary>
internal static class ProgramEntry
{
    public static Entry At(DateTimeOffset now, string zone)
    {
        var local = TimeZoneInfo.ConvertTime(now, TimeZoneInfo.FindSystemTimeZoneById(zone));
        return new Entry(Guid.CreateVersion7(now), "fleetwake", "program", 0, local, zone, local, now, 0, null);
    }
}
