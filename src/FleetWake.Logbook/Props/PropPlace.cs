using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Props;

/// <summary>Where a prop is, by the last record that says so.</summary>
/// <param name="Standing">In what way it is there.</param>
/// <param name="Since">Dock's date of the record that says so; null when none does.</param>
/// <param name="Boat">The boat that it is mounted on.</param>
/// <param name="Position">The position on it.</param>
/// <param name="Dock">The dock where it lies as a spare; null when nobody said.</param>
/// <param name="DockAssumed">Nobody said where it lies: the dock is the home of the boat that it came off.</param>
/// <param name="Shop">The shop it is at, or the lender it went back to.</param>
/// <param name="Wish">What it was sent to the shop for.</param>
/// <param name="DueBackOn">Date by which it should be back.</param>
/// <param name="Retired">Why it is used no more.</param>
public sealed record PropPlace(
    PropStanding Standing,
    DateOnly? Since,
    string? Boat = null,
    Position? Position = null,
    string? Dock = null,
    bool DockAssumed = false,
    string? Shop = null,
    ShopWish? Wish = null,
    DateOnly? DueBackOn = null,
    PropRetirement? Retired = null)
{
    /// <summary>The place after the prop's own facts and its mountings.</summary>
    /// <param name="facts">The prop's facts that count, in order.</param>
    /// <param name="mountings">Its mountings, each with the boat's history.</param>
    /// <param name="order">The order of things.</param>
    internal static PropPlace Of(IReadOnlyList<IFact> facts, IReadOnlyList<(BoatHistory Boat, MountingSpan Span)> mountings, IComparer<Entry> order)
    {
        var begin = facts.OfType<PropRegistered>().FirstOrDefault() is { } registered
            ? new PropPlace(PropStanding.Spare, registered.Entry.Date())
            : new PropPlace(PropStanding.NotKnown, null);

        // A prop that comes off at the entry that puts it on elsewhere is first off, then on.
        return facts.Select(f => (f.Entry, On: false, Next: (Func<PropPlace, PropPlace>)(place => Told(place, f, facts))))
            .Concat(mountings.Select(m => (m.Span.Fitted.Entry, On: true, Next: (Func<PropPlace, PropPlace>)(_ => On(m.Span)))))
            .Concat(mountings.Where(m => m.Span.To is not null).Select(m => (m.Span.To!, On: false, Next: (Func<PropPlace, PropPlace>)(place => Off(place, m.Boat, m.Span)))))
            .OrderBy(step => step.Item1, order).ThenBy(step => step.On)
            .Aggregate(begin, (place, step) => step.Next(place));
    }

    private static PropPlace Told(PropPlace before, IFact fact, IReadOnlyList<IFact> facts)
    {
        var on = fact.Entry.Date();
        return fact switch
        {
            PropStored stored => new PropPlace(PropStanding.Spare, on, Dock: stored.Dock),
            PropSentToShop sent => new PropPlace(PropStanding.AtShop, on, Shop: sent.Shop, Wish: sent.Wish, DueBackOn: sent.DueBackOn),
            PropRetired retired => new PropPlace(PropStanding.Retired, on, Retired: retired.Why),
            LoanerReturned => new PropPlace(
                PropStanding.GivenBack, on, Shop: facts.TakeWhile(f => f != fact).OfType<LoanerTaken>().LastOrDefault()?.Lender),
            // Papers are written late: they do not take a prop off the boat that it runs on.
            PropBackFromShop or LoanerTaken or PropAcquired when before.Standing is not (PropStanding.Mounted or PropStanding.Spare) =>
                new PropPlace(PropStanding.Spare, on),
            _ => before,
        };
    }

    private static PropPlace On(MountingSpan span) =>
        new(PropStanding.Mounted, span.Fitted.Entry.Date(), span.Fitted.Boat, span.Fitted.Position);

    /// <summary>A mounting that nobody ended in time says nothing of a prop that was seen elsewhere since.</summary>
    private static PropPlace Off(PropPlace before, BoatHistory boat, MountingSpan span)
    {
        if (span.To is not { } to || before.Standing != PropStanding.Mounted || before.Boat != span.Fitted.Boat || before.Position != span.Fitted.Position) return before;
        var dock = boat.Facts.OfType<BoatRehomed>().LastOrDefault(r => boat.Order.Compare(r.Entry, to) <= 0)?.Dock ?? boat.Registered?.Dock;
        return new PropPlace(PropStanding.Spare, to.Date(), Dock: dock, DockAssumed: dock is not null);
    }
}

/// <summary>In what way a prop is where it is.</summary>
public enum PropStanding
{
    /// <summary>No record says.</summary>
    NotKnown,

    /// <summary>On a boat.</summary>
    Mounted,

    /// <summary>Off, and ours to fit.</summary>
    Spare,

    /// <summary>At a shop.</summary>
    AtShop,

    /// <summary>Used no more.</summary>
    Retired,

    /// <summary>A loaner that went back.</summary>
    GivenBack,
}
