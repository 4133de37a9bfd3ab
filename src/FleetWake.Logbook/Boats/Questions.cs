using System.Text.Json;
using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Boats;

/// <summary>What a boat's records leave open, each as a question to a person.</summary>
/// <param name="name">The boat's name for people.</param>
/// <param name="own">The boat's facts that count.</param>
/// <param name="registered">Its registration.</param>
internal sealed class Questions(string name, Effective own, BoatRegistered? registered)
{
    public static IEnumerable<Contradiction> PropsInTwoPlaces(IReadOnlyList<MountingSpan> here, IEnumerable<MountingSpan> elsewhere)
    {
        var pairs = here.SelectMany((a, i) => here.Skip(i + 1).Concat(elsewhere).Select(b => (A: a, B: b)));
        foreach (var (a, b) in pairs.Where(p => p.A.PropKnown() && p.A.Fitted.Prop == p.B.Fitted.Prop && p.A.Overlaps(p.B)))
        {
            // Named in the order of things, so that both boats ask the same question.
            var (first, second) = EntryOrder.Instance.Compare(a.Fitted.Entry, b.Fitted.Entry) <= 0 ? (a.Fitted, b.Fitted) : (b.Fitted, a.Fitted);
            yield return new Contradiction(
                ContradictionKind.PropInTwoPlaces,
                [first.Entry.Id, second.Entry.Id],
                $"Prop {first.Prop} is on record {At(first.Position)} {first.Boat} since {first.Entry.Date():yyyy-MM-dd} and {At(second.Position)} {second.Boat} since {second.Entry.Date():yyyy-MM-dd}. Where is it, and which prop is at the other place?");
        }
    }

    public IEnumerable<Contradiction> EnginesNotThere(IReadOnlyList<EngineSpan> here)
    {
        foreach (var removed in own.Facts.OfType<EngineRemoved>())
        {
            var hung = here.FirstOrDefault(s => s.EndedBy(removed));
            if (hung is not null && (removed.Engine ?? hung.Engine) == hung.Engine) continue;
            var place = $"{Words.Of(removed.Position)} of {name}";
            yield return new Contradiction(
                ContradictionKind.EngineNotThere,
                hung is null ? [removed.Entry.Id] : [hung.From.Id, removed.Entry.Id],
                $"{(removed.Engine is null ? "An engine" : $"Engine {removed.Engine}")} came off {place} on {removed.Entry.Date():yyyy-MM-dd}, and {hung?.Engine ?? "none"} was on record there. Which one was it{(hung is null ? ", and since when" : "")}?");
        }
    }

    /// <summary>Twins often turn opposite ways: a prop goes from one side to the other only if its rotation fits.</summary>
    public IEnumerable<Contradiction> RotationsThatDoNotFit(
        IReadOnlyList<MountingSpan> mountings, IReadOnlyList<EngineSpan> here, IReadOnlyDictionary<string, Effective> engines, IReadOnlyDictionary<string, Effective> props) =>
        from mounting in mountings
        where props.ContainsKey(mounting.Fitted.Prop)
        let prop = props[mounting.Fitted.Prop].Facts.OfType<PropRegistered>().FirstOrDefault()
        where prop is not null
        from span in here.Where(s => s.Position == mounting.Fitted.Position && s.Holds(mounting.Fitted.Entry)).Take(1)
        let fit = engines[span.Engine].Facts.OfType<EngineFitStated>().LastOrDefault()
        where (fit?.Rotation ?? prop.Rotation) != prop.Rotation
        select new Contradiction(
            ContradictionKind.RotationDoesNotFit,
            [prop.Entry.Id, fit.Entry.Id, mounting.Fitted.Entry.Id],
            $"Prop {prop.Prop} turns {Words.Of(prop.Rotation)}, and engine {span.Engine} of {name}, where it is on record since {mounting.Fitted.Entry.Date():yyyy-MM-dd}, turns {Words.Of(fit.Rotation!)}. Is it another prop, or is one of the two stated wrong?");

    public IEnumerable<Contradiction> HoursOutOfLine(IReadOnlyDictionary<string, MeterChain> meters, IReadOnlyList<EngineSpan> here)
    {
        foreach (var (engine, chain) in meters.OrderBy(m => m.Key, StringComparer.Ordinal))
        {
            if (here.LastOrDefault(s => s.To is null && s.Engine == engine) is null) continue;
            foreach (var odd in chain.SetAside)
            {
                var near = chain.Readings.LastOrDefault(r => chain.Order.Compare(r.Entry, odd.Entry) < 0) ?? chain.Readings[0];

                // The question is of the odd one: another that arrives between the two does not ask it again.
                yield return new Contradiction(
                    ContradictionKind.HoursOutOfLine,
                    [odd.Entry.Id],
                    $"The hour meter of {engine} ({name}) read {near.Shown:0.#} h on {near.Entry.Date():yyyy-MM-dd} and {odd.Shown:0.#} h on {odd.Entry.Date():yyyy-MM-dd}, which does not fit the other readings. Was {odd.Shown:0.#} misread?");
            }
        }
    }

    /// <summary>A wide-open reading far from the rated band is more likely misread than turned.</summary>
    public IEnumerable<Contradiction> RpmOutOfLine(IReadOnlyList<EngineSpan> engines, IReadOnlyDictionary<string, EngineRegistered> cards) =>
        from fact in own.Facts
        let readings = WideOpenReadings(fact).ToList()
        where readings.Count > 0
        from span in engines
        where span.Holds(fact.Entry) && cards.ContainsKey(span.Engine)
        let card = cards[span.Engine]
        from reading in readings.Where(t => t.Position == span.Position && !CredibleRpm.Is(t.Rpm, card.BandLowRpm, card.BandHighRpm)).Take(1)
        select new Contradiction(
            ContradictionKind.RpmOutOfLine,
            [fact.Entry.Id],
            $"{name} was read at {reading.Rpm:0} RPM on {fact.Entry.Date():yyyy-MM-dd}, far from its rated band {card.BandLowRpm:0} to {card.BandHighRpm:0}. Was it misread? Until that is settled the trial is set aside.");

    public IEnumerable<Contradiction> TrialsWithoutProp(IReadOnlyList<MountingSpan> mountings) =>
        from trial in own.Facts
        from position in Positions(trial)
        where !mountings.Any(m => m.Fitted.Position == position && m.Holds(trial.Entry))
        select new Contradiction(
            ContradictionKind.TrialWithoutProp,
            [trial.Entry.Id],
            $"{name} was trialled on {trial.Entry.Date():yyyy-MM-dd} with no prop on record{(position == Position.Single ? "" : " at " + Words.Of(position))}. Which prop was fitted?");

    public IEnumerable<Contradiction> NoSuchPosition()
    {
        if (registered is null) yield break;
        foreach (var fact in own.Facts)
        {
            var odd = Named(fact)
                .Where(p => !registered.Positions.Contains(p)).Select(p => Words.Of(p)).ToList();
            if (odd.Count == 0) continue;
            yield return new Contradiction(
                ContradictionKind.NoSuchPosition,
                [registered.Entry.Id, fact.Entry.Id],
                $"A record of {fact.Entry.Date():yyyy-MM-dd} names {string.Join(" and ", odd)} of {name}, which is registered with {string.Join(", ", registered.Positions.Select(p => Words.Of(p)))}. Which engine was it?");
        }
    }

    public IEnumerable<Contradiction> RegisteredTwice(IEnumerable<Effective> logs)
    {
        foreach (var log in logs)
        {
            var told = log.Facts.OfType<IRegistration>().ToList();
            if (told.DistinctBy(Content).Count() < 2) continue;
            var (what, kind) = told[0] switch
            {
                EngineRegistered e => ($"Engine {e.Engine}", "engine"),
                PropRegistered p => ($"Prop {p.Prop}", "prop"),
                _ => (name, "boat"),
            };
            yield return new Contradiction(
                ContradictionKind.RegisteredTwice,
                [told[0].Entry.Id, told[^1].Entry.Id],
                $"{what} is registered {told.Count} times, not all alike; the first counts. Was a later one meant as an amendment, or is it another {kind}?");
        }
    }

    public IEnumerable<Contradiction> NothingToCorrect(IEnumerable<Effective> logs) =>
        logs.SelectMany(l => l.Unmatched).DistinctBy(f => f.Entry.Id).Select(fact => new Contradiction(
            ContradictionKind.NothingToCorrect,
            [fact.Entry.Id],
            $"A {(fact is Retracted ? "retraction" : "correction")} typed on {DateOnly.FromDateTime(fact.Entry.Entered().DateTime):yyyy-MM-dd} names an entry that is not on the record of {name}, or that is of another kind. Is that entry still to come, or what was to be corrected?"));

    public IEnumerable<Contradiction> NoSuchClaims(Func<Guid, Guid> original)
    {
        var claims = own.Facts.OfType<ClaimOpened>().Select(c => original(c.Entry.Id)).ToHashSet();
        foreach (var fact in own.Facts)
        {
            var (claim, what) = fact switch { ClaimCosted c => (c.Claim, "cost"), ClaimClosed c => (c.Claim, "end"), _ => ((Guid?)null, "") };
            if (claim is not { } named || claims.Contains(original(named))) continue;
            yield return new Contradiction(
                ContradictionKind.NoSuchClaim,
                [fact.Entry.Id],
                $"The {what} of a claim was told on {fact.Entry.Date():yyyy-MM-dd}, and no such claim is on record of {name}. Is it still to come, or which claim is it?");
        }
    }

    private static string Content(IRegistration registration)
    {
        var fields = JsonSerializer.SerializeToNode<IFact>(registration, LogbookJson.Options)!.AsObject();
        fields.Remove("entry");
        return fields.ToJsonString();
    }

    private static IEnumerable<Position> Named(IFact fact) => fact switch
    {
        TrialRun trial => Positions(trial).Concat(trial.Meters.Select(m => m.Position)).Distinct(),
        RigChanged { Position: { } position } => [position],
        DutyTaken { Position: { } position } => [position],
        DutyDone { Position: { } position } => [position],
        IAtPosition at => [at.Position],
        _ => [],
    };

    /// <summary>Positions whose RPM a fact tells; none of a fact that is no trial.</summary>
    private static IEnumerable<Position> Positions(IFact fact) => fact switch
    {
        TrialRun trial => trial.Runs.SelectMany(r => r.Tachometers).Select(t => t.Position).Distinct(),
        NormalisedRpmRead read => [read.Position],
        _ => [],
    };

    private static IEnumerable<(Position Position, double Rpm)> WideOpenReadings(IFact fact) => fact switch
    {
        TrialRun { Throttle: Throttle.WideOpen } trial => trial.Runs.SelectMany(r => r.Tachometers).Select(t => (t.Position, t.Rpm)),
        NormalisedRpmRead read => [(read.Position, read.Rpm)],
        _ => [],
    };

    private static string At(Position position) => position == Position.Single ? "on" : $"at {Words.Of(position)} of";
}
