using FleetWake.Logbook;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>What needs a person, one item per boat: a manager decides about boats, not about flags.</summary>
internal static class Decisions
{
    public const string NotForHire = "not for hire";
    public const string LookFirst = "look first";

    /// <summary>It stays ashore anyhow, and loses no hire by it.</summary>
    public const string LaidUp = "laid up, not for hire";

    /// <summary>The decisions, boats that are not for hire first.</summary>
    /// <param name="findings">The boats.</param>
    /// <param name="day">The day whose prices count.</param>
    /// <param name="policy">The operator's policy; the usual one when null.</param>
    /// <param name="news">Prices and addresses.</param>
    /// <param name="charted">Ids of the boats that have a chart.</param>
    public static IReadOnlyList<DecisionItem> Of(IReadOnlyList<BoatFinding> findings, DateOnly day, FleetPolicy? policy, WearNews news, IReadOnlySet<string> charted) =>
    [
        .. findings
            .Select(f => (Finding: f, Attentions: Attentions.Of(f, policy), Hire: HireStates.Of(f, policy).Word))
            .Where(f => f.Attentions.Count > 0)
            .OrderByDescending(f => f.Hire)
            .ThenBy(f => f.Attentions.Min(a => a.Kind))
            .ThenBy(f => Worst(f.Finding))
            .Select(f => Item(f.Finding, f.Attentions, f.Hire) with
            {
                Exit = Exit(f.Finding),
                Waiting = WaitingCost.Of(f.Finding, f.Attentions, news, day),
                Chart = charted.Contains(f.Finding.Boat) ? ChartKey(f.Finding.Boat) : "",
                Link = news.BoatLink(f.Finding.Boat),
            }),
    ];

    /// <summary>The key of a boat's charts.</summary>
    public static string ChartKey(string boat) => $"boat-{boat}";

    /// <summary>When its worst engine is expected to leave the band; empty where nothing is forecast.</summary>
    private static string Exit(BoatFinding finding) =>
        finding.IsLaidUp() ? "" : finding.Positions.Where(p => p.Mounting?.Exit.State == BandExitState.Forecast).MinBy(p => p.Mounting!.Exit.HoursFromLastTrial) is { } worst
            ? $"Expected exit{(finding.Positions.Count > 1 ? $" of {Words.Prose(worst.Position)}" : "")}: {Phrases.Exit(worst.Mounting!.Exit)}."
            : "";

    /// <summary>What a state means for hire, told apart: a look takes minutes, a boat that is out stays. Null when nothing keeps it.</summary>
    public static string? Hire(HireWord word) => word switch { HireWord.Out => NotForHire, HireWord.LookFirst => LookFirst, _ => null };

    /// <summary>Adds what has to be said of boats whose finding is older than their record.</summary>
    public static IReadOnlyList<DecisionItem> WithStale(IReadOnlyList<DecisionItem> decisions, IReadOnlyList<BoatFinding> findings, IReadOnlyList<string> stale)
    {
        var point = new DecisionPoint(
            "Its newest records are not in this digest: they could not be assessed in time.",
            "Settled by: \"fleetwake check\", which names the error; until then ask the dock.");
        var names = stale.Select(b => findings.FirstOrDefault(f => f.Boat == b) is { } f ? (Phrases.Plain(f.DisplayName()), Phrases.Plain(f.Registered?.Dock ?? "")) : (Phrases.Plain(b), "")).ToList();
        return
        [
            .. decisions.Select(d => names.Contains((d.Boat, d.Dock)) ? d with { Points = [.. d.Points, point] } : d),
            .. names.Where(n => !decisions.Any(d => (d.Boat, d.Dock) == n)).Select(n => new DecisionItem(n.Item1, n.Item2, false, "to decide", [point])),
        ];
    }

    private static DecisionItem Item(BoatFinding finding, IReadOnlyList<Attention> attentions, HireWord hire) =>
        new DecisionItem(
            Phrases.Plain(finding.DisplayName()),
            Phrases.Plain(finding.Registered?.Dock ?? ""),
            hire != HireWord.InHire,
            hire != HireWord.InHire && finding.IsLaidUp() ? LaidUp : Hire(hire) ?? "to decide",
            [.. attentions.OrderByDescending(a => a.Blocks).ThenBy(a => a.Kind).Select(a => new DecisionPoint($"{Where(finding, a)}{Phrases.Plain(a.Sentence)}", Settles(a)))]);

    private static string Where(BoatFinding finding, Attention attention) =>
        finding.Positions.Count > 1 && attention.Position is { } p ? $"{Name(p)}: " : "";

    private static string Name(Position position)
    {
        var word = Words.Prose(position);
        return char.ToUpperInvariant(word[0]) + word[1..];
    }

    private static double Worst(BoatFinding finding) =>
        finding.Positions.Where(p => p.Mounting is not null).Select(p => Standings.Of(p).MarginRpm ?? double.MaxValue).DefaultIfEmpty(double.MaxValue).Min();

    private static string Settles(Attention attention) => attention.Kind switch
    {
        _ when attention.ReleasedBy is { } by => $"Released by: {char.ToLowerInvariant(by[0])}{by[1..]}",
        AttentionKind.OpenStrike or AttentionKind.Damage => "Settled by: a look at prop and shaft, recorded with the verdict fit.",
        AttentionKind.Repair => "Settled by: the repair, and a later inspection that says fit and sees none of it.",
        AttentionKind.HubSlip => "Settled by: a new hub, and a later inspection with the verdict fit.",
        AttentionKind.OutsideBand => "Settled by: the likely causes looked at one by one, then a trial inside the band; another pitch only when they are ruled out.",
        AttentionKind.OutOfLine => "Settled by: a look at blades and hub, and another trial.",
        AttentionKind.Contradiction => "Settled by: an answer, and an amended or retracted record.",
        AttentionKind.NotRegistered => "Settled by: registration, or retraction of the records.",
        AttentionKind.Drifting => "Settled by: an inspection of blades and hub, and one more trial; the owner's manual wins.",
        _ => "Before then: an inspection, and one more trial to narrow the interval.",
    };
}
