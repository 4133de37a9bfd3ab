using FleetWake.Demo;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>What the program finds on the invented fleet, worked out of its facts without a database.</summary>
public static class AssessedFleet
{
    public static IReadOnlyDictionary<string, BoatFinding> Of(InventedRecord record)
    {
        var logs = new FleetLogs();
        logs.Add(DecidedRecords.Facts(record));
        return logs.Boats.ToDictionary(b => b, b => Assess.Boat(logs.DossierOf(b)), StringComparer.Ordinal);
    }
}
