using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>
/// What strikes and inspections leave standing, here and wherever prop and engine go. Only a "fit" that comes after
/// clears it; what is told late stands again until then.
/// </summary>
/// <param name="history">The boat's history.</param>
internal sealed class Suspicions(BoatHistory history)
{
    private readonly IReadOnlyList<Place> places =
    [
        new Place(history.Boat, history.Facts, history.Engines, history.Mountings),
        .. history.Elsewhere.Select(e => new Place(e.Boat, e.Facts, e.Engines, e.Mountings)),
    ];

    /// <summary>What no verdict of "fit" can stand beside: it clears nothing then.</summary>
    public static bool Grave(InspectionMark mark) => mark is InspectionMark.HubSlip or InspectionMark.Crack or InspectionMark.WaterInOil;

    /// <summary>Strikes at a position that nothing has cleared.</summary>
    public IReadOnlyList<OpenStrike> OpenStrikes(Position position) =>
    [
        .. history.Strikes
            .Where(s => s.Position == position && s.Severity != StrikeSeverity.NoMark)
            .Select(s => (Strike: s, Material: Material(places[0], position, s.Entry)))
            .Where(x => !At(places[0], position).Any(i => Clears(i, x.Strike, x.Material)))
            .Select(x => new OpenStrike(x.Strike.Entry.Id, x.Strike.Entry.Date(), x.Strike.Object, x.Strike.Severity)
            {
                Material = x.Material,
                LookedOverOn = x.Strike.Severity == StrikeSeverity.Scuffed ? LookedOver(position, x.Strike.Entry)?.Date() : null,
                LiftedOn = LiftedOn(x.Strike.Entry),
            }),
    ];

    /// <summary>Inspections at a position that found what has to be seen to, and that nothing has cleared.</summary>
    public IReadOnlyList<InspectionCard> Uncleared(Position position) =>
    [
        .. At(places[0], position).Where(i => Stands(i) && !At(places[0], position).Any(later => Clears(later, i))).Select(Card),
    ];

    /// <summary>An inspection in short.</summary>
    public InspectionCard Card(Inspected inspected) =>
        new(inspected.Entry.Date(), inspected.Verdict, inspected.Marks) { LiftedOn = inspected.Verdict == Verdict.TakeOff ? null : LiftedOn(inspected.Entry) };

    /// <summary>What prop and engine brought with them. It stays where it was told of as well, until that place is inspected.</summary>
    public IReadOnlyList<CarriedSuspicion> Carried(MountingSpan? mounting, EngineSpan? engine) =>
    [
        .. mounting is null || !mounting.PropKnown() ? [] : Along(
            SuspectPart.Prop,
            mounting.Fitted.Prop,
            mounting.Fitted.Entry,
            [.. places.SelectMany(p => p.Mountings.Where(m => m.Fitted.Prop == mounting.Fitted.Prop).Select(m => new Stay(p, m.Fitted.Position, m.Holds, m.Fitted.Entry)))]),
        .. engine is null ? [] : Along(
            SuspectPart.LowerUnit,
            engine.Engine,
            engine.From,
            [.. places.SelectMany(p => p.Engines.Where(e => e.Engine == engine.Engine).Select(e => new Stay(p, e.Position, e.Holds, e.From)))]),
    ];

    private IEnumerable<CarriedSuspicion> Along(SuspectPart part, string thing, Entry came, IReadOnlyList<Stay> stays)
    {
        var looks = stays.SelectMany(s => At(s.Place, s.Position).Where(i => s.Holds(i.Entry))).ToList();
        foreach (var stay in stays.Where(s => s.From.Id != came.Id))
        {
            CarriedSuspicion Told(Entry entry, StrikeSeverity? severity, Verdict? verdict, IReadOnlyList<InspectionMark> marks) => new(
                entry.Id, entry.Date(), part, thing, stay.Place.Boat, severity, verdict, marks, Material(stay.Place, stay.Position, entry),
                verdict == Verdict.TakeOff ? null : LiftedOn(history.Order.Compare(entry, came) > 0 ? entry : came));

            foreach (var strike in stay.Place.Facts.OfType<StrikeReported>().Where(s => s.Position == stay.Position && s.Severity != StrikeSeverity.NoMark && stay.Holds(s.Entry)))
            {
                var material = Material(stay.Place, stay.Position, strike.Entry);
                if ((part == SuspectPart.Prop || ReachesLowerUnit(strike.Severity, material)) && !looks.Any(i => Clears(i, strike, material)))
                    yield return Told(strike.Entry, strike.Severity, null, []);
            }

            foreach (var look in looks.Where(i => i.Boat == stay.Place.Boat && i.Position == stay.Position && stay.Holds(i.Entry) && Stands(i)))
            {
                var water = look.Marks.Contains(InspectionMark.WaterInOil);
                if ((part == SuspectPart.LowerUnit) == water && !looks.Any(later => Clears(later, look)))
                    yield return Told(look.Entry, null, look.Verdict, look.Marks);
            }
        }
    }

    /// <summary>
    /// A bent or broken blade has shaken shaft and gears whatever it is made of. Stainless gives way less, and passes on
    /// what would have chipped: so may a prop whose material nobody knows. Common practice, no source.
    /// </summary>
    private static bool ReachesLowerUnit(StrikeSeverity severity, PropMaterial? material) =>
        severity >= StrikeSeverity.Bent || (severity == StrikeSeverity.Chipped && material is null or PropMaterial.Stainless);

    private static bool Stands(Inspected inspected) => inspected.Verdict is Verdict.TakeOff or Verdict.Repair || inspected.Marks.Any(Grave);

    private bool Clears(Inspected later, Inspected earlier) => IsFit(later) && history.Order.Compare(later.Entry, earlier.Entry) > 0;

    /// <summary>After a strike on stainless that left more than a scuff, shaft and gear oil have to be among what was seen, where the record says what was.</summary>
    private bool Clears(Inspected later, StrikeReported strike, PropMaterial? material) =>
        IsFit(later) && history.Order.Compare(later.Entry, strike.Entry) > 0
        && (material != PropMaterial.Stainless || strike.Severity < StrikeSeverity.Chipped || later.Seen is null
            || (later.Seen.Contains(InspectedPart.Shaft) && later.Seen.Contains(InspectedPart.GearOil)));

    private static bool IsFit(Inspected inspected) => inspected.Verdict == Verdict.Fit && !inspected.Marks.Any(Grave);

    private static IEnumerable<Inspected> At(Place place, Position position) => place.Facts.OfType<Inspected>().Where(i => i.Position == position);

    private PropMaterial? Material(Place place, Position position, Entry entry) =>
        place.Mountings.LastOrDefault(m => m.Fitted.Position == position && m.Holds(entry)) is { } mounting
        && history.Props.GetValueOrDefault(mounting.Fitted.Prop)?.OfType<PropRegistered>().FirstOrDefault() is { } prop
            ? prop.Material
            : null;

    /// <summary>A short look since that saw no damage, with none after it that did.</summary>
    private Entry? LookedOver(Position position, Entry strike) =>
        history.Facts.OfType<LookedOver>().LastOrDefault(l => l.Position == position && history.Order.Compare(l.Entry, strike) > 0) is { Seen: not LookSeen.Damage } look ? look.Entry : null;

    private DateOnly? LiftedOn(Entry since) =>
        history.Facts.OfType<ReturnedToHire>().LastOrDefault(r => history.Order.Compare(r.Entry, since) > 0)?.Entry.Date();

    private sealed record Place(string Boat, IReadOnlyList<IFact> Facts, IReadOnlyList<EngineSpan> Engines, IReadOnlyList<MountingSpan> Mountings);

    private sealed record Stay(Place Place, Position Position, Func<Entry, bool> Holds, Entry From);
}
