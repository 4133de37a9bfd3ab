using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Boats;

/// <summary>The logs of a fleet at hand, to tell its boats without a database.</summary>
public sealed class FleetLogs
{
    private readonly Dictionary<string, FactLog> logs = new(StringComparer.Ordinal);

    /// <summary>Every boat that has a record, by id.</summary>
    public IEnumerable<string> Boats => logs.Keys.Select(StreamName.BoatOf).OfType<string>().Order(StringComparer.Ordinal);

    /// <summary>Every log, by stream.</summary>
    public IEnumerable<FactLog> Logs => logs.Values.OrderBy(l => l.Id, StringComparer.Ordinal);

    /// <summary>Adds facts to their logs.</summary>
    public void Add(IEnumerable<Placed> facts)
    {
        foreach (var placed in facts) logs[placed.Stream] = Log(placed.Stream).Evolve(placed.Fact);
    }

    /// <summary>Everything that bears on a boat.</summary>
    public Dossier DossierOf(string boat) => Dossier.Gather(Log(StreamName.Boat(boat)), Log);

    private FactLog Log(string stream) => logs.GetValueOrDefault(stream) ?? FactLog.Empty(stream);
}
