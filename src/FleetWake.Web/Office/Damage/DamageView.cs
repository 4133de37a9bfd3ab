using FleetWake.Logbook;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Photos;

namespace FleetWake.Web.Office.Damage;

/// <summary>All that the statement of a damage shows, each of it from the record.</summary>
/// <param name="Card">The claim.</param>
/// <param name="BoatName">The boat's name.</param>
/// <param name="Several">The boat has more positions than one.</param>
/// <param name="Opened">The record that opened it.</param>
/// <param name="Strike">The strike that it names; null when none is on record.</param>
/// <param name="Before">The last look before; null when there is none.</param>
/// <param name="After">Looks and inspections from the damage on, in order, the first few.</param>
/// <param name="Prop">The prop that was on, with its size.</param>
/// <param name="Costs">Estimates and invoices, in order.</param>
/// <param name="Closed">How it ended.</param>
/// <param name="Charge">What of the cost may be charged; null when the fleet is too large to reckon.</param>
public sealed record DamageView(
    ClaimCard Card,
    string BoatName,
    bool Several,
    ClaimOpened Opened,
    StrikeReported? Strike,
    IFact? Before,
    IReadOnlyList<IFact> After,
    (string Tag, PropRegistered? Registered)? Prop,
    IReadOnlyList<ClaimCosted> Costs,
    ClaimClosed? Closed,
    ClaimCharge? Charge)
{
    /// <summary>Photos of these records, by entry.</summary>
    public ILookup<Guid, EntryPhoto> Photos { get; init; } = Array.Empty<EntryPhoto>().ToLookup(p => p.Entry);

    /// <summary>Entries whose photos are shown.</summary>
    internal IReadOnlyList<Guid> Shown => [.. new[] { Strike?.Entry.Id, Before?.Entry.Id }.OfType<Guid>(), .. After.Select(a => a.Entry.Id)];

    private const int MostAfter = 4;

    internal static DamageView? Of(BoatHistory history, Guid claim, ClaimCharge? charge)
    {
        var first = history.Original;
        if (Logbook.Claims.Claims.Of(history.Facts, first).FirstOrDefault(c => c.Claim == first(claim)) is not { } card) return null;
        var opened = history.Facts.OfType<ClaimOpened>().First(c => first(c.Entry.Id) == card.Claim);
        var strike = opened.Strike is { } struck ? history.Strikes.FirstOrDefault(s => first(s.Entry.Id) == first(struck)) : null;
        var hit = strike?.Entry ?? opened.Entry;
        var mounting = history.Mountings.LastOrDefault(m => m.Fitted.Position == card.Position && history.Order.Compare(m.Fitted.Entry, hit) <= 0);
        bool Here(IFact f) => f is IAtPosition at && at.Position == card.Position;
        return new DamageView(
            card,
            history.Registered?.Name ?? history.Boat,
            history.Registered?.Positions.Count > 1,
            opened,
            strike,
            card.Statement.Earlier is { } earlier ? history.Facts.FirstOrDefault(f => f.Entry.Id == earlier.Entry) : null,
            [
                .. history.Facts.Where(Here).Where(f => f is Inspected or LookedOver && f.Entry.Id != card.Statement.Earlier?.Entry
                    && (history.Order.Compare(f.Entry, hit) >= 0 || (f is LookedOver { Moment: LookMoment.AfterHire } l && l.Hire == card.Hire))).Take(MostAfter),
            ],
            mounting is null ? null : (mounting.Fitted.Prop, history.PropOf(mounting)),
            [.. history.Facts.OfType<ClaimCosted>().Where(c => first(c.Claim) == card.Claim)],
            history.Facts.OfType<ClaimClosed>().LastOrDefault(c => first(c.Claim) == card.Claim),
            charge);
    }
}

/// <summary>A claim in the list.</summary>
/// <param name="Card">The claim.</param>
/// <param name="BoatName">The boat's name.</param>
public sealed record ClaimLine(ClaimCard Card, string BoatName);

/// <summary>A boat of which a claim is to be opened.</summary>
/// <param name="Boat">Its id.</param>
/// <param name="Name">Its name.</param>
/// <param name="Positions">Its positions.</param>
/// <param name="Strikes">Its strikes that no claim names yet, the newest first.</param>
public sealed record ClaimableBoat(string Boat, string Name, IReadOnlyList<Position> Positions, IReadOnlyList<StrikeReported> Strikes)
{
    private const int MostStrikes = 20;

    internal static ClaimableBoat Of(BoatHistory history)
    {
        var claimed = history.Facts.OfType<ClaimOpened>().Select(c => c.Strike).OfType<Guid>().Select(history.Original).ToHashSet();
        return new ClaimableBoat(
            history.Boat,
            history.Registered?.Name ?? history.Boat,
            history.Registered?.Positions ?? Enum.GetValues<Position>(),
            [.. history.Strikes.Where(s => !claimed.Contains(history.Original(s.Entry.Id))).Reverse().Take(MostStrikes)]);
    }
}
