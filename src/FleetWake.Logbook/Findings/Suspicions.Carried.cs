using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <content>What prop and engine bring along.</content>
internal sealed partial class Suspicions
{
    /// <summary>
    /// What prop and engine brought with them. It stays where it was told of as well, until that place is inspected; what
    /// stands at this very position is told there, and not again because a prop was off in between.
    /// </summary>
    public IReadOnlyList<CarriedSuspicion> Carried(MountingSpan? mounting, EngineSpan? engine)
    {
        if ((mounting?.Fitted.Position ?? engine?.Position) is not { } position) return [];
        var told = Open(position).Select(x => x.Strike.Entry.Id).Concat(Standing(position).Select(i => i.Entry.Id))
            .Concat(Damaged(places[0], position).Where(l => !At(places[0], position).Any(i => Clears(i, l.Entry))).Select(l => l.Entry.Id)).ToHashSet();
        IEnumerable<CarriedSuspicion> carried =
        [
            .. mounting is null || !mounting.PropKnown() ? [] : Along(SuspectPart.Prop, mounting.Fitted.Prop, mounting.Fitted.Entry, StaysOfProp(mounting.Fitted.Prop)),
            .. engine is null ? [] : Along(SuspectPart.LowerUnit, engine.Engine, engine.From, StaysOfEngine(engine.Engine)),
        ];
        return [.. carried.Where(c => !told.Contains(c.Entry))];
    }

    private List<Stay> StaysOfProp(string prop)
    {
        var own = places.SelectMany(p => p.Mountings.Where(m => m.Fitted.Prop == prop).Select(m => (Place: p, Span: m))).ToList();
        return
        [
            .. own.Select(s => new Stay(s.Place, s.Span.Fitted.Position, s.Span.Holds, s.Span.Fitted.Entry, Next(
                s.Span.Fitted.Entry, s.Place.Mountings.Where(m => m.Fitted.Position == s.Span.Fitted.Position).Select(m => m.Fitted.Entry).Concat(own.Select(o => o.Span.Fitted.Entry))))),
        ];
    }

    private List<Stay> StaysOfEngine(string engine)
    {
        var own = places.SelectMany(p => p.Engines.Where(e => e.Engine == engine).Select(e => (Place: p, Span: e))).ToList();
        return
        [
            .. own.Select(s => new Stay(s.Place, s.Span.Position, s.Span.Holds, s.Span.From, Next(
                s.Span.From, s.Place.Engines.Where(e => e.Position == s.Span.Position).Select(e => e.From).Concat(own.Select(o => o.Span.From))))),
        ];
    }

    private Entry? Next(Entry from, IEnumerable<Entry> starts) => starts.Where(s => history.Order.Compare(s, from) > 0).Order(history.Order).FirstOrDefault();

    private IEnumerable<CarriedSuspicion> Along(SuspectPart part, string thing, Entry came, IReadOnlyList<Stay> stays)
    {
        var looks = stays.SelectMany(s => At(s.Place, s.Position).Where(i => InHand(s, i)).Select(i => (Look: i, Stay: s))).ToList();
        var shortLooks = stays.SelectMany(s => ShortLooks(s.Place, s.Position).Where(l => InHand(s, l))).ToList();
        bool Cleared(Entry entry) => looks.Any(l => Clears(l.Look, entry) && Saw(l.Look, part, said: false));
        foreach (var stay in stays.Where(s => s.From.Id != came.Id))
        {
            CarriedSuspicion Told(Entry entry, StrikeSeverity? severity, Verdict? verdict, IReadOnlyList<InspectionMark> marks) => new(
                entry.Id, entry.Date(), part, thing, stay.Place.Boat, severity, verdict, marks, Material(stay.Place, stay.Position, entry),
                verdict == Verdict.TakeOff ? null : LiftedOn(entry, came))
            {
                LookedOverOn = severity == StrikeSeverity.Scuffed ? Harmless(shortLooks, entry)?.Date() : null,
                ShortFitOn = looks.Where(l => IsFit(l.Look) && After(l.Look, entry)).OrderBy(l => l.Look.Entry, history.Order).LastOrDefault().Look?.Entry.Date(),
            };

            foreach (var strike in stay.Place.Facts.OfType<StrikeReported>().Where(s => s.Position == stay.Position && s.Severity != StrikeSeverity.NoMark && stay.Holds(s.Entry)))
            {
                var material = Material(stay.Place, stay.Position, strike.Entry);
                if ((part == SuspectPart.Prop || ReachesLowerUnit(strike.Severity, material)) && !looks.Any(l => Clears(l.Look, l.Stay, strike, material, part, stay)))
                    yield return Told(strike.Entry, strike.Severity, null, []);
            }

            foreach (var look in looks.Where(l => ReferenceEquals(l.Stay, stay) && Stands(l.Look) && Concerns(part, l.Look.Marks)).Select(l => l.Look))
            {
                if (!Cleared(look.Entry)) yield return Told(look.Entry, null, look.Verdict, look.Marks);
            }

            if (part == SuspectPart.LowerUnit) continue;
            foreach (var look in Damaged(stay.Place, stay.Position).Where(l => InHand(stay, l) && !Cleared(l.Entry)))
                yield return Told(look.Entry, null, null, []);
        }
    }

    /// <summary>A prop that was just taken off is looked at in hand: until something else is fitted there, a look is a look at it.</summary>
    private bool InHand(Stay stay, IFact look) => stay.Holds(look.Entry) || Span.Holds(history.Order, stay.From, stay.Until, look.Entry);

    /// <summary>
    /// What cleared the strike where it happened, with everything still in its place, cleared it for prop and engine.
    /// Any other look has to have seen the part: after a hard strike on stainless it has to say so, and whatever may
    /// have been stainless counts as such for the lower unit.
    /// </summary>
    private bool Clears(Inspected later, Stay at, StrikeReported strike, PropMaterial? material, SuspectPart part, Stay struck)
    {
        var taken = material ?? (part == SuspectPart.LowerUnit ? PropMaterial.Stainless : null);
        if (ReferenceEquals(at, struck) && struck.Holds(later.Entry) && Clears(later, strike, taken)) return true;
        return Clears(later, strike.Entry) && Saw(later, part, said: taken == PropMaterial.Stainless && Hard(strike));
    }

    /// <summary>
    /// A bent or broken blade has shaken shaft and gears whatever it is made of. Stainless gives way less, and passes on
    /// what would have chipped: so may a prop whose material nobody knows. Common practice, no source.
    /// </summary>
    private static bool ReachesLowerUnit(StrikeSeverity severity, PropMaterial? material) =>
        severity >= StrikeSeverity.Bent || (severity == StrikeSeverity.Chipped && material is null or PropMaterial.Stainless);

    /// <summary>An inspection may have found something of both: what is at the seal or in the oil stays with the engine, all else may be the prop's.</summary>
    private static bool Concerns(SuspectPart part, IReadOnlyList<InspectionMark> marks) => part == SuspectPart.LowerUnit
        ? marks.Any(m => m is InspectionMark.WaterInOil or InspectionMark.LineAtSeal)
        : marks is not [InspectionMark.WaterInOil];

    private sealed record Stay(Place Place, Position Position, Func<Entry, bool> Holds, Entry From, Entry? Until);
}
