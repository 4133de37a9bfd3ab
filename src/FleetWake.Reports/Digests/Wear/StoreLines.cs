using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Advice;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>Props in the shop, and spares to order.</summary>
internal static class StoreLines
{
    private const int Most = 10;

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

    /// <summary>
    /// What boats want by their own trials, then sizes and parts to order by how often they were wanted: the same as the office's page of spares names.
    /// One line when what is in store is enough.
    /// </summary>
    public static IReadOnlyList<string> Order(WearNews news)
    {
        // The store is the fleet's: a dock's reader is not told to order what lies at another dock.
        if (news.Dock is not null) return [];
        if (news.Spares is not { } spares) return news.FiguresLeftOut is { } why ? [why] : [];
        // What has to be settled first is no order yet, and what lies in store needs none.
        var wanted = news.PropsWanted.Where(w => w is { First.Count: 0, InStore: 0, DiameterInches: not null, PitchInches: not null }).ToList();
        List<string> lines =
        [
            .. wanted.Select(Wanted),
            .. spares.Sizes.Where(s => s.ToOrder > 0).Select(s => $"{s.ToOrder} of {s.Size}: {s.Count.AtHand} at hand, {s.BaseStock} to hold."),
            .. spares.Parts.Where(p => p.ToOrder > 0).Select(p => $"{p.ToOrder} of {Phrases.Plain(p.Name ?? p.Part)}."),
        ];
        if (lines.Count == wanted.Count) lines.Add(lines.Count == 0 ? spares.Sentence : $"Besides: {char.ToLowerInvariant(spares.Sentence[0])}{spares.Sentence[1..]}");
        return lines.Count <= Most ? lines : [.. lines.Take(Most), $"And {lines.Count - Most} more."];
    }

    private static string Wanted(PropWanted want)
    {
        var name = $"{Phrases.Plain(want.BoatName)}{(want.Position is { } p ? $", {Words.Prose(p)}" : "")}";
        var why = want.Outside ? "outside its band" : want.On is { } on ? $"to leave its band about {on:yyyy-MM-dd}" : "likely to leave its band soon";
        var ruled = want.RuleOut.Count == 0 ? "" : $", once {CauseWords.List(want.RuleOut)} {(want.RuleOut.Count == 1 ? "is" : "are")} ruled out";
        return $"{name} ({why}): {(want.Another ? $"{want.DiameterInches:0.##} x {want.PitchInches:0.##} in is advised{ruled}" : $"another of {want.DiameterInches:0.##} x {want.PitchInches:0.##} in, or this one made good by a shop")}; none in store.";
    }
}
