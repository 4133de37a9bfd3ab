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
/// What strikes, inspections and short looks leave standing, here and wherever prop and engine go. Only a "fit" that
/// comes after clears it; what is told late stands again until then.
/// </summary>
/// <param name="history">The boat's history.</param>
internal sealed partial class Suspicions(BoatHistory history)
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
        .. Open(position).Select(x => new OpenStrike(x.Strike.Entry.Id, x.Strike.Entry.Date(), x.Strike.Object, x.Strike.Severity)
        {
            Material = x.Material,
            LookedOverOn = x.Strike.Severity == StrikeSeverity.Scuffed ? Harmless(ShortLooks(places[0], position), x.Strike.Entry)?.Date() : null,
            LiftedOn = LiftedOn(x.Strike.Entry),
            Original = Original(x.Strike.Entry),
            ShortFitOn = At(places[0], position).LastOrDefault(i => IsFit(i) && After(i, x.Strike.Entry))?.Entry.Date(),
        }),
    ];

    /// <summary>Inspections at a position that found what has to be seen to, and that nothing has cleared.</summary>
    public IReadOnlyList<InspectionCard> Uncleared(Position position) => [.. Standing(position).Select(Card)];

    /// <summary>A short look that saw damage, with no "fit" since: the last that nobody lifted, else the last.</summary>
    public DamageSeen? Damage(Position position)
    {
        var seen = Damaged(places[0], position)
            .Where(l => !At(places[0], position).Any(i => Clears(i, l.Entry)))
            .Select(l => new DamageSeen(l.Entry.Date(), l.Moment, LiftedOn(l.Entry))).ToList();
        return seen.LastOrDefault(d => d.LiftedOn is null) ?? seen.LastOrDefault();
    }

    /// <summary>An inspection in short.</summary>
    public InspectionCard Card(Inspected inspected) => new(inspected.Entry.Date(), inspected.Verdict, inspected.Marks)
    {
        LiftedOn = inspected.Verdict == Verdict.TakeOff ? null : LiftedOn(inspected.Entry),
        Material = MaterialInHand(inspected),
        Entry = inspected.Entry.Id,
        Original = Original(inspected.Entry),
    };

    private Guid? Original(Entry entry) => history.Original(entry.Id) is var first && first != entry.Id ? first : null;

    private IEnumerable<(StrikeReported Strike, PropMaterial? Material)> Open(Position position) =>
        history.Strikes
            .Where(s => s.Position == position && s.Severity != StrikeSeverity.NoMark)
            .Select(s => (Strike: s, Material: Material(places[0], position, s.Entry)))
            .Where(x => !At(places[0], position).Any(i => Clears(i, x.Strike, x.Material)));

    private IEnumerable<Inspected> Standing(Position position) =>
        At(places[0], position).Where(i => Stands(i) && !At(places[0], position).Any(later => Clears(later, i.Entry)));

    private static bool Stands(Inspected inspected) => inspected.Verdict is Verdict.TakeOff or Verdict.Repair || inspected.Marks.Any(Grave);

    private static bool IsFit(Inspected inspected) => inspected.Verdict == Verdict.Fit && !inspected.Marks.Any(Grave);

    private bool After(IFact later, Entry earlier) => history.Order.Compare(later.Entry, earlier) > 0;

    private bool Clears(Inspected later, Entry earlier) => IsFit(later) && After(later, earlier) && SawAny(later);

    /// <summary>After a strike on stainless that left more than a scuff, the record has to say that shaft and gear oil were seen.</summary>
    private bool Clears(Inspected later, StrikeReported strike, PropMaterial? material) =>
        Clears(later, strike.Entry) && (material != PropMaterial.Stainless || !Hard(strike) || Saw(later, SuspectPart.LowerUnit, said: true));

    private static bool Hard(StrikeReported strike) => strike.Severity >= StrikeSeverity.Chipped;

    /// <summary>Whether an inspection saw a part. One that says nothing of what it saw is taken to have seen it, unless that has to be said.</summary>
    private static bool Saw(Inspected look, SuspectPart part, bool said) =>
        look.Seen is not { Count: > 0 } seen ? !said
        : part == SuspectPart.Prop ? seen.Contains(InspectedPart.Prop)
        : seen.Contains(InspectedPart.Shaft) && seen.Contains(InspectedPart.GearOil);

    /// <summary>A change of gear oil alone says nothing of a blade.</summary>
    private static bool SawAny(Inspected look) => Saw(look, SuspectPart.Prop, said: false) || Saw(look, SuspectPart.LowerUnit, said: false);

    private static IEnumerable<Inspected> At(Place place, Position position) => place.Facts.OfType<Inspected>().Where(i => i.Position == position);

    private static IEnumerable<LookedOver> ShortLooks(Place place, Position position) => place.Facts.OfType<LookedOver>().Where(l => l.Position == position);

    private static IEnumerable<LookedOver> Damaged(Place place, Position position) => ShortLooks(place, position).Where(l => l.Seen == LookSeen.Damage);

    private PropMaterial? Material(Place place, Position position, Entry entry) =>
        MaterialOf(place.Mountings.LastOrDefault(m => m.Fitted.Position == position && m.Holds(entry)));

    /// <summary>Of the prop that was looked at: the one fitted there, else the one that came off last.</summary>
    private PropMaterial? MaterialInHand(Inspected inspected) =>
        MaterialOf(history.Mountings.LastOrDefault(m => m.Fitted.Position == inspected.Position && history.Order.Compare(m.Fitted.Entry, inspected.Entry) <= 0));

    private PropMaterial? MaterialOf(MountingSpan? mounting) =>
        mounting is null ? null : history.PropOf(mounting)?.Material;

    /// <summary>
    /// A short look since that saw no damage, with none after it that did. The look at a return that saw a mark is how
    /// a scuff is found: it releases nothing.
    /// </summary>
    private Entry? Harmless(IEnumerable<LookedOver> looks, Entry strike) =>
        looks.OrderBy(l => l.Entry, history.Order)
            .LastOrDefault(l => After(l, strike) && l is not { Moment: LookMoment.AfterHire, Seen: LookSeen.Mark }) is { Seen: not LookSeen.Damage } look ? look.Entry : null;

    /// <summary>Somebody put the boat back in hire after all of it, and it was known here by then: nobody lifts what still lies in a phone.</summary>
    private DateOnly? LiftedOn(params Entry[] what) =>
        history.Facts.OfType<ReturnedToHire>().LastOrDefault(r => what.All(w => After(r, w) && w.ReceivedAt <= r.Entry.ReceivedAt))?.Entry.Date();

    private sealed record Place(string Boat, IReadOnlyList<IFact> Facts, IReadOnlyList<EngineSpan> Engines, IReadOnlyList<MountingSpan> Mountings);
}
