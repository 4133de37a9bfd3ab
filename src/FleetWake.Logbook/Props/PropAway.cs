using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Props;

/// <summary>Props that are on a boat by one record and away by another.</summary>
internal static class PropAway
{
    /// <summary>A question for each mounting during which its prop was told to be elsewhere, or gone before it began.</summary>
    /// <param name="name">The boat's name for people.</param>
    /// <param name="mountings">The boat's mountings.</param>
    /// <param name="props">The facts that count of each of its props, in order.</param>
    /// <param name="order">The order of things.</param>
    public static IEnumerable<Contradiction> Questions(
        string name, IReadOnlyList<MountingSpan> mountings, IReadOnlyDictionary<string, IReadOnlyList<IFact>> props, IComparer<Entry> order)
    {
        foreach (var mounting in mountings)
        {
            var fitted = mounting.Fitted.Entry;
            var facts = props.GetValueOrDefault(mounting.Fitted.Prop) ?? [];
            var before = facts.TakeWhile(f => order.Compare(f.Entry, fitted) <= 0).LastOrDefault(f => f is PropRetired or LoanerReturned or LoanerTaken);
            if (before is PropRetired or LoanerReturned)
            {
                yield return new Contradiction(
                    ContradictionKind.PropAway,
                    [before.Entry.Id, fitted.Id],
                    $"Prop {mounting.Fitted.Prop} {Away(before)} on {before.Entry.Date():yyyy-MM-dd} and was fitted to {name} on {fitted.Date():yyyy-MM-dd}. Is it the same prop?");
            }

            // Papers and props move on one day: what was written within the minute of the removal is not asked about.
            if (facts.FirstOrDefault(f => Away(f) is not null && order.Compare(f.Entry, fitted) > 0 && mounting.Holds(f.Entry) && Before(f.Entry, mounting.To)) is { } away)
            {
                yield return new Contradiction(
                    ContradictionKind.PropAway,
                    [fitted.Id, away.Entry.Id],
                    $"Prop {mounting.Fitted.Prop} is on record on {name} since {fitted.Date():yyyy-MM-dd}, and it {Away(away)} on {away.Entry.Date():yyyy-MM-dd}. When did it come off?");
            }
        }
    }

    private static bool Before(Entry entry, Entry? to) => to is null || entry.Happened() < to.Happened();

    private static string? Away(IFact fact) => fact switch
    {
        PropSentToShop => "went to a shop",
        PropStored => "was put by as a spare",
        PropRetired => "was retired",
        LoanerReturned => "was given back to its lender",
        _ => null,
    };
}
