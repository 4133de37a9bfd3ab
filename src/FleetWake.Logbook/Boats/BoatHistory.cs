using System.Collections.Immutable;
using System.Text.Json.Serialization;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Boats;

/// <summary>What happened to one boat, in the order in which it happened, with what the records leave open.</summary>
/// <param name="Boat">The boat's id.</param>
/// <param name="Registered">Its registration; null while only records of it have arrived.</param>
/// <param name="Engines">Where engines hung on it.</param>
/// <param name="EngineCards">Registration of each of its engines that is registered.</param>
/// <param name="Meters">Hours of each of its engines.</param>
/// <param name="Mountings">Its mountings.</param>
/// <param name="Props">The facts that count of each of its props.</param>
/// <param name="Strikes">Its strikes.</param>
/// <param name="Inspections">Its inspections.</param>
/// <param name="Trials">Its trials.</param>
/// <param name="Contradictions">What a person has to settle.</param>
/// <param name="Facts">All facts of its own log that count.</param>
public sealed record BoatHistory(
    string Boat,
    BoatRegistered? Registered,
    IReadOnlyList<EngineSpan> Engines,
    IReadOnlyDictionary<string, EngineRegistered> EngineCards,
    IReadOnlyDictionary<string, MeterChain> Meters,
    IReadOnlyList<MountingSpan> Mountings,
    IReadOnlyDictionary<string, IReadOnlyList<IFact>> Props,
    IReadOnlyList<StrikeReported> Strikes,
    IReadOnlyList<Inspected> Inspections,
    IReadOnlyList<TrialRun> Trials,
    IReadOnlyList<Contradiction> Contradictions,
    IReadOnlyList<IFact> Facts)
{
    /// <summary>The order of things, in which a corrected record keeps its place among those of its instant.</summary>
    [JsonIgnore]
    public IComparer<Entry> Order { get; init; } = EntryOrder.Instance;

    /// <summary>The entry that a record began with, whatever amended it since: other records name that one, or any of its amendments.</summary>
    [JsonIgnore]
    public Func<Guid, Guid> Original { get; init; } = id => id;

    /// <summary>The facts that count of each of its engines.</summary>
    [JsonIgnore]
    public IReadOnlyDictionary<string, IReadOnlyList<IFact>> EngineFacts { get; init; } = ImmutableDictionary<string, IReadOnlyList<IFact>>.Empty;

    /// <summary>Where it is at home; null while it is not registered.</summary>
    public BoatHome? Home { get; init; }

    /// <summary>Its prop plan: the last line told of each position and use, in their order.</summary>
    public IReadOnlyList<PropPlanned> PropPlan { get; init; } = [];

    /// <summary>Entries of RPM readings that looked wrong and that somebody says were right.</summary>
    [JsonIgnore]
    public IReadOnlySet<Guid> Believed { get; init; } = ImmutableHashSet<Guid>.Empty;

    /// <summary>Other boats that its engines and props were on.</summary>
    [JsonIgnore]
    public IReadOnlyList<BoatElsewhere> Elsewhere { get; init; } = [];

    /// <summary>Tells a boat's history from the logs that bear on it. Pure; the same logs give the same history whatever order they arrived in.</summary>
    public static BoatHistory Tell(Dossier dossier)
    {
        var settled = Settlement.Of(dossier.Logs());
        var own = Effective.Of(dossier.Boat.Facts, settled, dossier.Until);
        var registered = own.Facts.OfType<BoatRegistered>().FirstOrDefault();
        var name = registered?.Name ?? dossier.BoatId;
        var boats = dossier.OtherBoats.Concat(dossier.BoatsBeyond).ToDictionary(b => b.Key, b => Effective.Of(b.Value.Facts, settled, dossier.Until).Facts, StringComparer.Ordinal);
        boats[dossier.BoatId] = own.Facts;
        var engines = dossier.Engines.ToDictionary(e => e.Key, e => Effective.Of(e.Value.Facts, settled, dossier.Until), StringComparer.Ordinal);
        var props = dossier.Props.ToDictionary(p => p.Key, p => Effective.Of(p.Value.Facts, settled, dossier.Until), StringComparer.Ordinal);

        var spans = EngineSpan.Of(boats.Values.SelectMany(f => f), settled.Order);
        var answers = new Settled(boats.Values.SelectMany(f => f), settled.Order);
        var hoursBelieved = answers.Believed(ContradictionKind.HoursOutOfLine);
        var meters = engines.ToDictionary(
            e => e.Key,
            e => MeterChain.Of(MeterReadings.Of(e.Key, e.Value.Facts, spans, boats), e.Value.Facts.OfType<MeterReplaced>(), settled.Order, hoursBelieved),
            StringComparer.Ordinal);
        var here = spans.Where(s => s.Boat == dossier.BoatId).ToList();
        var mountings = FleetWake.Logbook.Mountings.Mountings.Of(name, own.Facts, here, settled.Original, settled.Order);
        var elsewhere = dossier.OtherBoats.Keys.Select(b => TellElsewhere(b, boats[b], [.. spans.Where(s => s.Boat == b)], settled)).ToList();

        var cards = engines.SelectMany(e => e.Value.Facts.OfType<EngineRegistered>().Take(1)).ToDictionary(e => e.Engine, StringComparer.Ordinal);
        var questions = new Questions(name, own, registered);
        IEnumerable<Contradiction> asked =
        [
            .. mountings.Contradictions,
            .. Questions.PropsInTwoPlaces(mountings.Spans, elsewhere.SelectMany(e => e.Mountings)),
            .. PropAway.Questions(name, mountings.Spans, props.ToDictionary(p => p.Key, p => p.Value.Facts), settled.Order),
            .. questions.EnginesNotThere(here),
            .. questions.RotationsThatDoNotFit(mountings.Spans, here, engines, props),
            .. questions.HoursOutOfLine(meters, here),
            .. questions.TrialsWithoutProp(mountings.Spans),
            .. questions.RpmOutOfLine(here, cards),
            .. questions.NoSuchPosition(),
            .. questions.NoSuchClaims(settled.Original),
            .. questions.RegisteredTwice([own, .. engines.Values, .. props.Values]),
            .. questions.NothingToCorrect([own, .. engines.Values, .. props.Values]),
        ];
        return new BoatHistory(
            dossier.BoatId,
            registered,
            here,
            cards,
            meters,
            mountings.Spans,
            props.ToDictionary(p => p.Key, p => p.Value.Facts, StringComparer.Ordinal),
            [.. own.Facts.OfType<StrikeReported>()],
            [.. own.Facts.OfType<Inspected>()],
            [.. own.Facts.OfType<TrialRun>()],
            [.. asked.Where(answers.IsOpen)],
            own.Facts)
        {
            Order = settled.Order,
            Original = settled.Original,
            EngineFacts = engines.ToDictionary(e => e.Key, e => e.Value.Facts, StringComparer.Ordinal),
            Elsewhere = elsewhere,
            Home = BoatHome.Of(registered, own.Facts),
            PropPlan = [.. own.Facts.OfType<PropPlanned>().GroupBy(p => (p.Position, p.Use)).Select(p => p.Last()).OrderBy(p => p.Position).ThenBy(p => p.Use)],
            Believed = answers.Believed(ContradictionKind.RpmOutOfLine),
        };
    }

    /// <summary>
    /// Where the engine hung that turned a prop. It may be recorded after its prop on the same visit; one that leaves takes
    /// the prop along, so there is one at most.
    /// </summary>
    public EngineSpan? EngineOf(MountingSpan mounting) =>
        Engines.LastOrDefault(e => e.Position == mounting.Fitted.Position && e.Holds(mounting.Fitted.Entry))
        ?? Engines.FirstOrDefault(e => e.Position == mounting.Fitted.Position && mounting.Holds(e.From));

    /// <summary>What is stamped on the prop of a mounting; null while it is not registered, or not known.</summary>
    public PropRegistered? PropOf(MountingSpan mounting) =>
        Props.GetValueOrDefault(mounting.Fitted.Prop)?.OfType<PropRegistered>().FirstOrDefault();

    /// <summary>Pitch of a prop at the moment of an entry [in]; null while the prop is not registered.</summary>
    public double? PitchInchesAt(string prop, Entry entry) =>
        Props.TryGetValue(prop, out var facts) ? PropNumbers.At(facts, Order, entry).PitchInches : null;

    private static BoatElsewhere TellElsewhere(string boat, IReadOnlyList<IFact> facts, IReadOnlyList<EngineSpan> engines, Settlement settled) =>
        new(boat, facts, engines, FleetWake.Logbook.Mountings.Mountings.Of(boat, facts, engines, settled.Original, settled.Order).Spans);
}

/// <summary>Another boat that shared an engine or a prop with the one whose history is told.</summary>
/// <param name="Boat">The boat's id.</param>
/// <param name="Facts">The facts of its own log that count.</param>
/// <param name="Engines">Where engines hung on it.</param>
/// <param name="Mountings">Its mountings.</param>
public sealed record BoatElsewhere(string Boat, IReadOnlyList<IFact> Facts, IReadOnlyList<EngineSpan> Engines, IReadOnlyList<MountingSpan> Mountings);
