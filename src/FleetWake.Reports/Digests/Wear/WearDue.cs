using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>What is due, sorted by what a manager reads of it: the due list is the mechanic's.</summary>
/// <param name="Overdue">Everything overdue, longest first.</param>
/// <param name="Listed">Of it what releases no boat that is told of already: twins of a boat together.</param>
/// <param name="ToldOf">How much of it releases boats that are told of.</param>
/// <param name="Soon">What falls due within two weeks.</param>
internal sealed record WearDue(IReadOnlyList<DueItem> Overdue, IReadOnlyList<IReadOnlyList<(BoatFinding Finding, DueItem Item)>> Listed, int ToldOf, IReadOnlyList<DueItem> Soon)
{
    /// <summary>How far ahead due work is counted [days].</summary>
    public const int SoonDays = 14;

    /// <summary>Sorts it.</summary>
    /// <param name="due">What is due, longest overdue first.</param>
    /// <param name="kept">The boats that stay.</param>
    public static WearDue Of(IReadOnlyList<(BoatFinding Finding, DueItem Item)> due, IReadOnlyList<KeptBoat> kept)
    {
        var stay = kept.Select(k => k.Finding.Boat).ToHashSet(StringComparer.Ordinal);
        var overdue = due.Where(d => d.Item.Overdue()).ToList();
        var told = overdue.Where(d => d.Item.Kind is DutyKind.AfterStrikeInspection or DutyKind.BeforeRelaunch && stay.Contains(d.Finding.Boat)).ToList();
        return new WearDue(
            [.. overdue.Select(d => d.Item)],
            [.. overdue.Except(told).GroupBy(d => (d.Finding.Boat, d.Item.RuleId, d.Item.DueOn, d.Item.Strike)).Select(g => (IReadOnlyList<(BoatFinding, DueItem)>)[.. g])],
            told.Count,
            [.. due.Where(d => !d.Item.Overdue() && d.Item.DaysOverdue >= -SoonDays).Select(d => d.Item)]);
    }
}

/// <summary>What is due in words.</summary>
internal static class DueRows
{
    /// <summary>A row of what is overdue.</summary>
    public static DueRow Row(IReadOnlyList<(BoatFinding Finding, DueItem Item)> group, WearNews news)
    {
        var (finding, item) = group[0];
        var name = Phrases.Plain(item.BoatName);
        if (finding.Positions.Count > 1) name += $", {string.Join(" and ", group.Select(g => g.Item.Position).OfType<Logbook.Position>().Distinct().Order().Select(p => Words.Prose(p)))}";
        var taken = item.TakenBy is { } by ? $"; taken by {Phrases.Plain(news.Names.Person(by))}" : "";
        return new DueRow(name.TrimEnd(',', ' '), Phrases.Plain(news.DockName(item.Dock)), Phrases.Plain(item.What), $"{Phrases.Count(item.DaysOverdue, "day")} overdue{taken}");
    }

    /// <summary>What is due and not listed, in a sentence or two; null when there is none.</summary>
    public static string? LeftOut(WearDue due)
    {
        var more = due.Listed.Skip(WeeklyWear.MostRows).Sum(g => g.Count);
        string?[] said =
        [
            more > 0 ? $"{more} more {(more == 1 ? "is" : "are")} overdue." : null,
            due.ToldOf > 0 ? $"{(due.ToldOf == 1 ? "1 overdue look is" : $"{due.ToldOf} overdue looks are")} what the boats above stay for." : null,
            due.Soon.Count > 0 ? $"{due.Soon.Count} {(due.Soon.Count == 1 ? "falls" : "fall")} due within {WearDue.SoonDays} days, the first on {due.Soon.Min(d => d.DueOn):yyyy-MM-dd}." : null,
        ];
        return said.OfType<string>().ToList() is { Count: > 0 } sentences ? string.Join(" ", sentences) : null;
    }
}
