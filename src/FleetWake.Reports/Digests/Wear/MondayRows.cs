using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Props;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>
/// What changes Monday: boats that stay and what releases each, sizes that would be ordered too late, props that are late from the shop,
/// strikes that cluster at a dock, claims near their deadline. Each a sentence somebody can act on.
/// </summary>
internal static class MondayRows
{
    private const int MostNames = 40;

    /// <summary>A loaner is told of so long before it has to go back [days]; judgement.</summary>
    private const int LoanDays = 7;

    /// <summary>A claim is told of so long before its deadline [days]; judgement.</summary>
    private const int ClaimDays = 14;

    /// <summary>More lines of a kind than these nobody reads in two minutes; the rest is named or counted.</summary>
    private const int Most = 10;

    public static IReadOnlyList<MondayRow> Of(IReadOnlyList<BoatFinding> findings, IReadOnlyList<KeptBoat> kept, DateOnly day, WearNews news)
    {
        List<MondayRow> others = [.. TooLate(findings, day, news), .. Shop(day, news), .. Loaners(day, news), .. DockStrikes.Cluster(findings, day, news), .. Claims(findings, day, news)];
        return
        [
            .. kept.Take(Most).Select(k => new MondayRow("blocked", k.Sentence(news.Things), news.BoatLink(k.Finding.Boat)) { Name = Phrases.Plain(k.Finding.DisplayName()), Dock = Decisions.Dock(k.Finding, news) }),
            .. kept.Count > Most ? [new MondayRow("blocked", $"stay too: {string.Join(", ", kept.Skip(Most).Take(MostNames).Select(k => Phrases.Plain(k.Finding.DisplayName())))}{(kept.Count > Most + MostNames ? $" and {kept.Count - Most - MostNames} more" : "")}.", news.Link("office")) { Name = $"{kept.Count - Most} more" }] : Array.Empty<MondayRow>(),
            .. others.Take(Most),
            .. others.Count > Most ? [new MondayRow("more", $"And {others.Count - Most} more: props at the shop, loaners and claims.", news.Link("office"))] : Array.Empty<MondayRow>(),
        ];
    }

    /// <summary>Sizes of which none is at hand and whose order would take longer than the boat has.</summary>
    private static IEnumerable<MondayRow> TooLate(IReadOnlyList<BoatFinding> findings, DateOnly day, WearNews news)
    {
        if (news.Spares is not { } spares) yield break;
        var lead = (int)Math.Ceiling(spares.Question.LeadTimeDays);
        var leaving = findings.Where(f => f.Retired is null && !f.IsLaidUp())
            .SelectMany(f => f.Positions.Where(p => p.Mounting?.Exit.Dates?.On is { } on && on < day.AddDays(lead)).Select(p => (Finding: f, Position: p, p.Mounting!.Exit.Dates!.On)))
            .OrderBy(l => l.On);
        foreach (var need in leaving.GroupBy(l => Size(l.Position.Mounting!.Prop)).Where(g => g.Key is not null))
        {
            var same = spares.Sizes.Where(s => $"{s.Size.DiameterInches:0.##} x {s.Size.PitchInches:0.##}" == need.Key).ToList();
            if (same.Sum(s => s.Count.AtHand) > 0) continue;
            var first = need.First();
            yield return new MondayRow(
                "order",
                $"No spare {need.Key} is at hand, one ordered today takes about {lead} days, and {Phrases.Name(first.Finding, first.Position)} is to leave its band about {first.On:yyyy-MM-dd}{(need.Count() > 1 ? $", {need.Count() - 1} more after it" : "")}: order now.",
                news.Link("office/spares"));
        }
    }

    private static IEnumerable<MondayRow> Shop(DateOnly day, WearNews news) =>
        news.AtShop.Where(l => l.Place.DueBackOn < day).OrderBy(l => l.Place.DueBackOn).Select(l => new MondayRow(
            "shop", $"Prop {Phrases.Plain(l.Prop)} should have been back from {Phrases.Plain(l.Place.Shop ?? "the shop")} on {l.Place.DueBackOn:yyyy-MM-dd}, {Phrases.Count(day.DayNumber - l.Place.DueBackOn!.Value.DayNumber, "day")} ago: ask.",
            news.Link($"office/props/{Uri.EscapeDataString(l.Prop)}")));

    private static IEnumerable<MondayRow> Loaners(DateOnly day, WearNews news) =>
        news.Loaners.Where(l => l.Loan?.DueBackOn <= day.AddDays(LoanDays)).OrderBy(l => l.Loan!.DueBackOn).Select(l =>
        {
            var (back, left) = (l.Loan!.DueBackOn!.Value, l.Loan.DueBackOn.Value.DayNumber - day.DayNumber);
            var when = left < 0 ? $"should have gone back on {back:yyyy-MM-dd}, {Phrases.Count(-left, "day")} ago" : left == 0 ? "goes back today" : $"goes back on {back:yyyy-MM-dd}, in {Phrases.Count(left, "day")}";
            return new MondayRow("loan", $"Prop {Phrases.Plain(l.Prop)}, on loan from {Phrases.Plain(l.Loan.Lender)}, {when}.", news.Link($"office/props/{Uri.EscapeDataString(l.Prop)}"));
        });

    private static IEnumerable<MondayRow> Claims(IReadOnlyList<BoatFinding> findings, DateOnly day, WearNews news) =>
        findings.SelectMany(f => f.ClaimsDue.Select(c => (Finding: f, Claim: c))).Where(c => c.Claim.Deadline <= day.AddDays(ClaimDays)).OrderBy(c => c.Claim.Deadline).Select(c =>
        {
            var left = c.Claim.Deadline.DayNumber - day.DayNumber;
            var when = left < 0 ? $"passed {Phrases.Count(-left, "day")} ago" : left == 0 ? "is today" : $"is in {Phrases.Count(left, "day")}";
            return new MondayRow("claim", $"The deadline of the claim of hire {Phrases.Plain(c.Claim.Hire)} on {Phrases.Plain(c.Finding.DisplayName())} {when} ({c.Claim.Deadline:yyyy-MM-dd}).", news.Link("office/claims"));
        });

    private static string? Size(PropCard prop) => prop is { DiameterInches: { } d, PitchInches: { } p } ? $"{Quarter(d):0.##} x {Quarter(p):0.##}" : null;

    private static double Quarter(double inches) => Math.Round(inches * 4, MidpointRounding.AwayFromZero) / 4;
}

/// <summary>Something that changes Monday.</summary>
/// <param name="Kind">blocked, order, shop, loan, strikes, claim, or more.</param>
/// <param name="Sentence">What, in a sentence; of a blocked boat the rest of one that begins with its name.</param>
/// <param name="Link">Address of the page about it; empty where none is set.</param>
[InTemplates]
public sealed record MondayRow(string Kind, string Sentence, string Link)
{
    /// <summary>Name of a blocked boat; else empty.</summary>
    public string Name { get; init; } = "";

    /// <summary>Its dock; else empty.</summary>
    public string Dock { get; init; } = "";
}
