using FleetWake.Demo;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>What the program finds on the invented fleet, worked out of its facts without a database.</summary>
public static class AssessedFleet
{
    public static IReadOnlyDictionary<string, BoatFinding> Of(InventedRecord record)
    {
        var logs = new Dictionary<string, FactLog>(StringComparer.Ordinal);
        foreach (var placed in DecidedRecords.Facts(record))
            logs[placed.Stream] = (logs.GetValueOrDefault(placed.Stream) ?? FactLog.Empty(placed.Stream)).Evolve(placed.Fact);
        FactLog Log(string stream) => logs.GetValueOrDefault(stream) ?? FactLog.Empty(stream);

        return logs.Keys.Where(s => StreamName.BoatOf(s) is not null)
            .Select(s => Assess.Boat(Dossier.Gather(logs[s], Dossier.EnginesNamed(logs[s]), Dossier.PropsNamed(logs[s]), Log)))
            .ToDictionary(f => f.Boat, StringComparer.Ordinal);
    }
}
