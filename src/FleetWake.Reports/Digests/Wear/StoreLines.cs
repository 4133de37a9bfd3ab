using FleetWake.Logbook.Entries;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>Props in the shop, and spares to order.</summary>
internal static class StoreLines
{
    private const int Most = 20;

    /// <summary>Props at a shop, a line each, the one that is back soonest first.</summary>
    public static IReadOnlyList<string> Shop(DateOnly day, WearNews news)
    {
        List<string> lines =
        [
            .. news.AtShop.OrderBy(l => l.Place.DueBackOn ?? DateOnly.MaxValue).ThenBy(l => l.Place.Since).Select(l =>
            {
                var wish = l.Place.Wish is { } w ? $" for {Words.Prose(w)}" : "";
                var back = l.Place.DueBackOn is { } due ? due < day ? $"due back {due:yyyy-MM-dd}, {Phrases.Count(day.DayNumber - due.DayNumber, "day")} late" : $"due back {due:yyyy-MM-dd}" : "no day was told for it to be back";
                return $"Prop {Phrases.Plain(l.Prop)} at {Phrases.Plain(l.Place.Shop ?? "a shop")}{wish} since {l.Place.Since:yyyy-MM-dd}: {back}.";
            }),
        ];
        return lines.Count <= Most ? lines : [.. lines.Take(Most), $"And {lines.Count - Most} more."];
    }

    /// <summary>Sizes and parts to order, a line each; one line when what is in store is enough.</summary>
    public static IReadOnlyList<string> Order(WearNews news)
    {
        // The store is the fleet's: a dock's reader is not told to order what lies at another dock.
        if (news.Dock is not null) return [];
        if (news.Spares is not { } spares) return news.FiguresLeftOut is { } why ? [why] : [];
        List<string> lines =
        [
            .. spares.Sizes.Where(s => s.ToOrder > 0).Select(s => $"{s.ToOrder} of {s.Size}. {s.Sentence}"),
            .. spares.Parts.Where(p => p.ToOrder > 0).Select(p => $"{p.ToOrder} of {Phrases.Plain(p.Name ?? p.Part)}. {p.Sentence}"),
        ];
        return lines.Count == 0 ? [spares.Sentence] : lines.Count <= Most ? lines : [.. lines.Take(Most), $"And {lines.Count - Most} more."];
    }
}
