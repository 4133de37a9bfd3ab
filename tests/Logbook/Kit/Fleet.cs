using System.Collections.Immutable;
using System.Text.Json;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Props;
using Xunit.Sdk;

namespace FleetWake.Logbook.Tests;

/// <summary>Streams in memory, and a boat's dossier gathered from them as the store gathers it.</summary>
internal sealed class Fleet
{
    private readonly ImmutableList<Placed> _placed;

    public Fleet() => _placed = [];

    private Fleet(ImmutableList<Placed> placed) => _placed = placed;

    public IReadOnlyList<Placed> Placed => _placed;

    public Fleet With(params IEnumerable<ICommand> records) => records.Aggregate(this, (fleet, r) => fleet.With(Accepted(r)));

    public Fleet With(IEnumerable<Placed> facts) => new(_placed.AddRange(facts));

    /// <summary>What a record becomes; it must not be refused.</summary>
    public static IReadOnlyList<Placed> Accepted(ICommand record, Arrival? arrival = null) =>
        Decide(record, arrival ?? Dock.Arrived) is Decision.Keep keep
            ? keep.Facts
            : throw new XunitException($"Refused: {record}");

    public static Decision Decide(ICommand record, Arrival arrival) =>
        RecordKind.All.Single(k => k.CommandType == record.GetType()).Decide(record, arrival);

    public BoatHistory History(string boat = Dock.Kea) => BoatHistory.Tell(Around(boat));

    public BoatFinding Finding(string boat = Dock.Kea) => Assess.Boat(Around(boat));

    /// <summary>Everything derived of a boat, as text to compare.</summary>
    public string Told(string boat = Dock.Kea)
    {
        var finding = Finding(boat);
        return JsonSerializer.Serialize(new { History = History(boat), Finding = finding, Attentions = Attentions.Of(finding) }, LogbookJson.Options);
    }

    /// <summary>The log of one stream.</summary>
    public FactLog Log(string stream) => _placed.Where(p => p.Stream == stream).Aggregate(FactLog.Empty(stream), (log, p) => log.Evolve(p.Fact));

    /// <summary>A prop's life, from the histories of the boats that its log names.</summary>
    public PropLife Life(string prop = "p1") => PropLife.Of(Log(StreamName.Prop(prop)), [.. Dossier.BoatsNamed(Log(StreamName.Prop(prop))).Select(History)]);

    public Dossier Around(string boat = Dock.Kea)
    {
        var logs = new FleetLogs();
        logs.Add(_placed);
        return logs.DossierOf(boat);
    }
}
