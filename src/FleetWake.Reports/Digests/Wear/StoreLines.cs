using FleetWake.Logbook.Entries;
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
        List<string> lines =
        [
            .. news.PropsWanted.Select(Wanted),
            .. spares.Sizes.Where(s => s.ToOrder > 0).Select(s => $"{s.ToOrder} of {s.Size}: {s.Count.AtHand} at hand, {s.BaseStock} to hold."),
            .. spares.Parts.Where(p => p.ToOrder > 0).Select(p => $"{p.ToOrder} of {Phrases.Plain(p.Name ?? p.Part)}."),
        ];
        if (lines.Count == news.PropsWanted.Count) lines.Add(lines.Count == 0 ? spares.Sentence : $"Besides: {char.ToLowerInvariant(spares.Sentence[0])}{spares.Sentence[1..]}");
        return lines.Count <= Most ? lines : [.. lines.Take(Most), $"And {lines.Count - Most} more."];
    }

    private static string Wanted(PropWanted want)
    {
        var name = $"{Phrases.Plain(want.BoatName)}{(want.Position is { } p ? $", {Words.Prose(p)}" : "")}";
        var why = want.Outside ? "outside its band" : want.On is { } on ? $"to leave its band about {on:yyyy-MM-dd}" : "likely to leave its band soon";
        if (want.First.Count > 0) return $"{name} ({why}): first settle {string.Join(" and ", want.First.Select(Waits))}.";
        if (want is not { DiameterInches: { } d, PitchInches: { } pitch }) return $"{name} ({why}): the size of its prop is not on record.";
        return $"{name} ({why}): {(want.Another ? "another pitch," : "its own size,")} {d:0.##} x {pitch:0.##} in; {(want.InStore == 0 ? "none" : $"{want.InStore}")} in store.";
    }

    private static string Waits(PitchWait wait) => wait switch
    {
        PitchWait.Hub => "the slipping hub",
        PitchWait.TakeOff => "the verdict of take off",
        PitchWait.Repair => "the repair that was asked for",
        PitchWait.Strike => "the open strike",
        _ => "why it left its band",
    };
}
