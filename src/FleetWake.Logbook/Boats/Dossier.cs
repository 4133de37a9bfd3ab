using System.Collections.Immutable;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Boats;

/// <summary>
/// All logs that bear on one boat: its own, its engines', its props', and those of other boats that
/// the same engines and props were on. A prop ran there until that boat's engine left, for whatever boat: so the engines
/// of those boats belong to it, and the boats that these went to.
/// </summary>
/// <param name="Boat">The boat's own log.</param>
/// <param name="Engines">Log of every engine it ever had, by engine id.</param>
/// <param name="Props">Log of every prop it ever had, by tag.</param>
/// <param name="OtherBoats">Logs of boats that share an engine or a prop with it, by boat id.</param>
public sealed record Dossier(
    FactLog Boat,
    ImmutableSortedDictionary<string, FactLog> Engines,
    ImmutableSortedDictionary<string, FactLog> Props,
    ImmutableSortedDictionary<string, FactLog> OtherBoats)
{
    /// <summary>Logs of the engines that other boats had, by engine id.</summary>
    public ImmutableSortedDictionary<string, FactLog> OtherEngines { get; init; } = ImmutableSortedDictionary.Create<string, FactLog>(StringComparer.Ordinal);

    /// <summary>Logs of boats that share an engine with the other boats and nothing with this one, by boat id.</summary>
    public ImmutableSortedDictionary<string, FactLog> BoatsBeyond { get; init; } = ImmutableSortedDictionary.Create<string, FactLog>(StringComparer.Ordinal);

    /// <summary>The last day that is looked at; null for everything. Corrections typed later still count: it is the record as known now.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>The boat's id.</summary>
    public string BoatId { get; } = StreamName.BoatOf(Boat.Id) ?? throw new ArgumentException($"{Boat.Id} is no boat's stream");

    /// <summary>Gathers a boat's dossier out of logs at hand.</summary>
    /// <param name="boat">The boat's own log.</param>
    /// <param name="log">The log of a stream, an empty one where nothing is known.</param>
    public static Dossier Gather(FactLog boat, Func<string, FactLog> log) => Gather(boat, boat, log);

    /// <summary>Gathers a boat's dossier out of logs at hand, with the engines and props that its log will name once it has grown.</summary>
    /// <param name="boat">The boat's own log.</param>
    /// <param name="grown">The same log with facts to come.</param>
    /// <param name="log">The log of a stream, an empty one where nothing is known.</param>
    public static Dossier Gather(FactLog boat, FactLog grown, Func<string, FactLog> log)
    {
        var engineLogs = Logs(EnginesNamed(grown), StreamName.Engine, log);
        var propLogs = Logs(PropsNamed(grown), StreamName.Prop, log);
        var others = Logs(engineLogs.Values.Concat(propLogs.Values).SelectMany(BoatsNamed).Where(b => StreamName.Boat(b) != boat.Id), StreamName.Boat, log);
        var otherEngines = Logs(others.Values.SelectMany(EnginesNamed).Where(e => !engineLogs.ContainsKey(e)), StreamName.Engine, log);
        var beyond = Logs(
            otherEngines.Values.SelectMany(BoatsNamed).Where(b => StreamName.Boat(b) != boat.Id && !others.ContainsKey(b)), StreamName.Boat, log);
        return new Dossier(boat, engineLogs, propLogs, others) { OtherEngines = otherEngines, BoatsBeyond = beyond };
    }

    /// <summary>Engines that a boat's log names, whether or not those records still count.</summary>
    public static IEnumerable<string> EnginesNamed(FactLog boat) =>
        boat.Facts.Select(f => f switch { EngineFitted e => e.Engine, EngineRemoved e => e.Engine, _ => null })
            .OfType<string>().Distinct(StringComparer.Ordinal);

    /// <summary>Props that a boat's log names, whether or not those records still count.</summary>
    public static IEnumerable<string> PropsNamed(FactLog boat) =>
        boat.Facts.Select(f => f switch { PropMounted m => m.Prop, FoundFitted m => m.Prop, PropRemoved r => r.Prop, _ => null })
            .OfType<string>().Distinct(StringComparer.Ordinal);

    /// <summary>Boats that the notices on an engine's or prop's log name.</summary>
    public static IEnumerable<string> BoatsNamed(FactLog engineOrProp) =>
        engineOrProp.Facts.Select(f => f switch
            {
                PropIssued i => i.Boat,
                PropFound p => p.Boat,
                PropReturned r => r.Boat,
                EngineInstalled e => e.Boat,
                EngineTakenOff e => e.Boat,
                _ => null,
            })
            .OfType<string>().Distinct(StringComparer.Ordinal);

    /// <summary>Every log of it, the boat's own first.</summary>
    public IEnumerable<FactLog> Logs() => [Boat, .. Engines.Values, .. Props.Values, .. OtherBoats.Values, .. OtherEngines.Values, .. BoatsBeyond.Values];

    /// <summary>The dossier with facts added to the logs they belong to; facts of logs that are not in it are left out.</summary>
    public Dossier With(IEnumerable<Placed> placed) => placed.Aggregate(this, (dossier, p) => dossier.With(p));

    private Dossier With(Placed placed)
    {
        if (placed.Stream == Boat.Id) return this with { Boat = Boat.Evolve(placed.Fact) };
        if (StreamName.EngineOf(placed.Stream) is { } engine) return this with { Engines = Add(Engines, engine, placed) };
        if (StreamName.PropOf(placed.Stream) is { } prop) return this with { Props = Add(Props, prop, placed) };
        return this;
    }

    private static ImmutableSortedDictionary<string, FactLog> Logs(IEnumerable<string> ids, Func<string, string> stream, Func<string, FactLog> log) =>
        ids.Distinct(StringComparer.Ordinal).ToImmutableSortedDictionary(id => id, id => log(stream(id)), StringComparer.Ordinal);

    private static ImmutableSortedDictionary<string, FactLog> Add(ImmutableSortedDictionary<string, FactLog> logs, string key, Placed placed) =>
        logs.SetItem(key, (logs.TryGetValue(key, out var log) ? log : FactLog.Empty(placed.Stream)).Evolve(placed.Fact));
}
