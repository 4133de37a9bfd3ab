using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Props;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>
/// What changes Monday: boats that stay and what releases each, sizes that would be ordered too late, props that are late from the shop,
/// strikes that cluster at a dock, claims near their deadline. Each a sentence somebody can act on.
/// </summary>
internal static class MondayRows
{
    /// <summary>A claim is told of so long before its deadline [days]; judgement.</summary>
    private const int ClaimDays = 14;

    /// <summary>More lines than these nobody reads in two minutes; the rest is counted.</summary>
    private const int Most = 12;

    public static IReadOnlyList<MondayRow> Of(IReadOnlyList<BoatFinding> findings, DateOnly day, FleetPolicy? policy, WearNews news)
    {
        List<MondayRow> rows = [.. Blocked(findings, day, policy, news), .. TooLate(findings, day, news), .. Shop(day, news), .. DockStrikes.Cluster(findings, day, news), .. Claims(findings, day, news)];
        return rows.Count <= Most ? rows : [.. rows.Take(Most - 1), new MondayRow("more", $"And {rows.Count - Most + 1} more of these, each under its boat or list.", news.Link("office"))];
    }

    private static IEnumerable<MondayRow> Blocked(IReadOnlyList<BoatFinding> findings, DateOnly day, FleetPolicy? policy, WearNews news)
    {
        var hire = news.Price(day, PricedThing.HireDay);
        foreach (var (finding, attentions) in findings.Select(f => (Finding: f, Kept: Attentions.Of(f, policy).Where(a => a.Blocks).ToList()))
            .Where(f => WaitingCost.LosesHire(f.Finding, f.Kept)).OrderByDescending(f => HireStates.Of(f.Finding, policy).Word).ThenBy(f => f.Kept.Min(a => a.Kind)))
        {
            var work = attentions.Select(a => ReleaseWork.Of(a, finding.Positions.FirstOrDefault(p => p.Position == a.Position))).OfType<ReleaseWork>().MaxBy(w => w.Minutes);
            var by = attentions[0].ReleasedBy is { } release ? $"released by {char.ToLowerInvariant(release[0])}{release[1..].TrimEnd('.')}" : "see below";
            var state = HireStates.Of(finding, policy).Word == HireWord.Out ? "stays at the dock" : "waits for a look";
            var labour = work is not null && news.Price(day, PricedThing.LabourHour) is { } hour ? $" ({WaitingCost.Text(hour with { Amount = decimal.Round(hour.Amount * work.Minutes / 60, 2) })} of labour)" : "";
            var lost = hire is null ? $"lost hire: {WaitingCost.NotSet}" : $"lost hire {WaitingCost.Text(hire)} a day";
            yield return new MondayRow(
                "blocked", $"{Phrases.Plain(finding.DisplayName())} {state}: {Phrases.Plain(by)}{(work is null ? "" : $"; {work.Text()}{labour}")}; {lost}.", news.BoatLink(finding.Boat));
        }
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
/// <param name="Kind">blocked, order, shop, strikes, claim, or more.</param>
/// <param name="Sentence">What, in a sentence.</param>
/// <param name="Link">Address of the page about it; empty where none is set.</param>
[InTemplates]
public sealed record MondayRow(string Kind, string Sentence, string Link);
