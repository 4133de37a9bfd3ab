using FleetWake.Logbook;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Propulsion.Causes;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>
/// What a manager has to decide: matters of band, drift and of what was put back in hire all the same, one item a boat. What keeps a boat
/// at the dock is work and no decision (<see cref="KeptBoat"/>), and a question is answered in the office.
/// </summary>
internal static class Decisions
{
    public const string NotForHire = "not for hire";
    public const string LookFirst = "look first";

    private const int MostCauses = 4;

    /// <summary>The decisions: outside the band first, then by what is likely soon, the smallest margin first.</summary>
    /// <param name="findings">The boats.</param>
    /// <param name="day">The day whose prices count.</param>
    /// <param name="policy">The operator's policy; the usual one when null.</param>
    /// <param name="news">Prices, names and addresses.</param>
    /// <param name="charted">Ids of the boats that have a chart.</param>
    public static IReadOnlyList<DecisionItem> Of(IReadOnlyList<BoatFinding> findings, DateOnly day, FleetPolicy? policy, WearNews news, IReadOnlySet<string> charted) =>
    [
        .. findings.Where(f => !f.IsLaidUp())
            .Select(f => (Finding: f, Matters: Matters(f, policy), Hire: HireStates.Of(f, policy).Word))
            .Where(f => f.Matters.Count > 0)
            .OrderBy(f => Rank(f.Matters[0].Kind)).ThenBy(f => Margin(f.Finding)).ThenBy(f => f.Finding.DisplayName(), StringComparer.OrdinalIgnoreCase)
            .Select(f => Item(f.Finding, f.Matters, f.Hire, day, news) with
            {
                Chart = charted.Contains(f.Finding.Boat) ? ChartKey(f.Finding.Boat) : "",
                Link = news.BoatLink(f.Finding.Boat),
            }),
    ];

    /// <summary>What of a boat is a manager's to decide, most urgent first.</summary>
    public static IReadOnlyList<Attention> Matters(BoatFinding finding, FleetPolicy? policy) =>
        [.. Attentions.Of(finding, policy).Where(a => !a.Blocks && a.Kind is not (AttentionKind.Contradiction or AttentionKind.NotRegistered)).OrderBy(a => Rank(a.Kind))];

    /// <summary>The key of a boat's charts.</summary>
    public static string ChartKey(string boat) => $"boat-{boat}";

    /// <summary>What a state means for hire, told apart: a look takes minutes, a boat that is out stays. Null when nothing keeps it.</summary>
    public static string? Hire(HireWord word) => word switch { HireWord.Out => NotForHire, HireWord.LookFirst => LookFirst, _ => null };

    /// <summary>Adds what has to be said of boats whose finding is older than their record.</summary>
    public static IReadOnlyList<DecisionItem> WithStale(IReadOnlyList<DecisionItem> decisions, IReadOnlyList<BoatFinding> findings, IReadOnlyList<string> stale, WearNews news)
    {
        var point = new DecisionPoint(
            "Its newest records are not in this digest: they could not be assessed in time.",
            "Settled by: \"fleetwake check\", which names the error; until then ask the dock.");
        var names = stale.Select(b => findings.FirstOrDefault(f => f.Boat == b) is { } f ? (Phrases.Plain(f.DisplayName()), Dock(f, news)) : (Phrases.Plain(b), "")).ToList();
        return
        [
            .. names.Where(n => !decisions.Any(d => (d.Boat, d.Dock) == n)).Select(n => new DecisionItem(n.Item1, n.Item2, false, "to decide", [point])),
            .. decisions.Select(d => names.Contains((d.Boat, d.Dock)) ? d with { Points = [.. d.Points, point] } : d),
        ];
    }

    /// <summary>The dock of a boat by its name; empty while it is not registered.</summary>
    public static string Dock(BoatFinding finding, WearNews news) => finding.Registered is { } card ? Phrases.Plain(news.DockName(card.Dock)) : "";

    private static DecisionItem Item(BoatFinding finding, IReadOnlyList<Attention> matters, HireWord hire, DateOnly day, WearNews news)
    {
        var first = At(finding, matters[0]);
        return new DecisionItem(
            Phrases.Plain(finding.DisplayName()), Dock(finding, news), hire != HireWord.InHire, Hire(hire) ?? "to decide", [.. matters.Where(a => a.Kind != AttentionKind.Drifting || !matters.Any(m => m.Kind == AttentionKind.LeavingBand && m.Position == a.Position)).Select(a => Point(finding, a, hire != HireWord.InHire, news))])
        {
            Exit = first?.Mounting?.Exit switch
            {
                { State: BandExitState.Forecast } exit => $"Expected exit: {Phrases.Outlook(exit)}.",
                { State: BandExitState.BeyondHorizon } => "Expected exit: none within 2000 engine hours.",
                _ => "",
            },
            Waiting = hire != HireWord.InHire ? finding.Registered is null ? "" : "Cost of waiting: its hire, counted above." : WaitingCost.Of(matters[0].Kind, first, news, day),
        };
    }

    private static DecisionPoint Point(BoatFinding finding, Attention matter, bool stays, WearNews news)
    {
        var where = finding.Positions.Count > 1 && matter.Position is { } p ? $"{Words.Prose(p)}: " : "";
        var (what, act) = Worded(matter, At(finding, matter), stays, news);
        return new DecisionPoint(Upper(where + what), act);
    }

    /// <summary>When somebody looked at it after its last trial and let it go on: then to look first would be asked in vain.</summary>
    private static DateOnly? LookedAt(AttentionKind kind, PositionFinding? position) =>
        kind is AttentionKind.OutsideBand or AttentionKind.OutOfLine or AttentionKind.LeavingBand or AttentionKind.Drifting
        && position is { Mounting.Trials: [.., var last], LastInspection: { Verdict: Verdict.Fit or Verdict.Watch } look } && look.On >= last.On ? look.On : null;

    private static (string What, string Act) Worded(Attention matter, PositionFinding? position, bool stays, WearNews news)
    {
        var (what, act) = Worded(matter, position, news);
        if (LookedAt(matter.Kind, position) is { } looked) act = Do($"a trial; prop and shaft were looked at on {looked:yyyy-MM-dd}");

        // A boat that stays for something else is not run before that is settled.
        return (what, stays ? Do("release it, then run a trial") : act);
    }

    private static (string What, string Act) Worded(Attention matter, PositionFinding? position, WearNews news)
    {
        if (position?.Mounting is not { } mounting) return (news.Things.Say(Phrases.Plain(matter.Sentence)), "Settled by: a look, and its record.");
        var before = mounting.Exit.State == BandExitState.NoTrialSinceNewBaseline;
        var unlike = position.Mounting.LastWideOpen(position.Engine)?.GrossChance > Unlike;
        return matter.Kind switch
        {
            AttentionKind.OutsideBand => (
                $"{Outside(mounting, position, unlike)}{(before ? Before : unlike ? "" : Causes(mounting, position))}",
                before ? Do("a trial, before anything else is decided")
                : unlike ? Do($"{SeparatingTests.Words(SeparatingTest.LookAtBottomAndBlades)}; then the hub; then run it again")
                : Next(mounting, "the likely causes looked at one by one, then a trial; another pitch only when they are ruled out")),
            AttentionKind.LeavingBand => (
                $"{Phrases.Percent(mounting.Exit.Within100HoursChance ?? 0)} likely to leave its band at the {Words.Prose(mounting.Exit.Edge!)} within {NextTrialCard.ActWithinHours:0} engine hours.{(mounting.Watch?.RaisedOn is null ? "" : $" {Upper(Alarm(mounting))}.")}{Causes(mounting, position)}",
                Next(mounting, "an inspection, and one more trial to narrow the interval")),
            AttentionKind.Drifting => (
                $"{Alarm(mounting)}.{Causes(mounting, position)}",
                Next(mounting, "an inspection of blades and hub, and one more trial")),
            AttentionKind.OutOfLine => (
                $"its last trial turned {mounting.Band.ObservedRpm:0} RPM, inside its band but unlike its others: misread, or something gave way.",
                Do($"{SeparatingTests.Words(SeparatingTest.LookAtBottomAndBlades)}; then the hub; then run it again")),
            _ => (news.Things.Say(Phrases.Plain(matter.Sentence)), Settled(matter.Kind)),
        };
    }

    private const string Before = " That was before a strike, work on the prop or a change of the boat; no trial since.";

    /// <summary>How far outside, by its last reading, and what its trials together say where that is another side of the edge.</summary>
    private static string Outside(MountingFinding mounting, PositionFinding position, bool unlike)
    {
        var below = mounting.Band.State == BandState.BelowBottom;
        var word = below ? "lugging" : "over-revving";
        var standing = Standings.Of(position);
        if (mounting.Band.ObservedRpm is not { } read || position.Engine is not { BandLowRpm: { } low, BandHighRpm: { } high }) return $"{word}: {standing.Sentence}.";
        var edge = $"the {(below ? "bottom" : "top")} ({(below ? low : high):0})";
        if (mounting.LastWideOpen(position.Engine)?.SetAside == SetAsideReason.LimiterReached) return $"{word}: held by its limiter at {read:0} RPM; without it, over {edge}.";
        var together = standing.TogetherRpm ?? read;
        var place = $"{Math.Abs(below ? low - read : read - high):0} {((below ? read < low : read > high) == below ? "below" : "above")} {edge}";
        if ((read < low, read > high) == (together < low, together > high))
        {
            // The less favourable of the two, as in the strip and in the chart's words.
            var least = standing.LeastRpm ?? read;
            return Math.Abs(least - read) < 1 ? $"{word}: {read:0} RPM, {place}." : $"{word}: {least:0} RPM by its trials together, {Math.Abs(below ? low - least : least - high):0} {(below ? "below" : "above")} {edge}; last read {read:0}.";
        }

        var alike = position.Mounting!.Trials.Where(t => t.SetAside is null).Reverse().TakeWhile(t => below ? t.TurnedRpm < low : t.TurnedRpm > high).Count();
        return alike > 1 ? $"{word} in its last {alike} trials, the last {read:0} RPM, {place}; all its trials together say {together:0}. Something changed, or they were misread."
            : unlike ? $"{word} as last read: {read:0} RPM, {place}, unlike its other trials ({together:0} together). Misread, or something gave way."
            : $"{word}, and not settled: last read {read:0} RPM, {place}; its trials together say {together:0}.";
    }

    /// <summary>A reading that is likelier unlike the others than this is spoken of [1]; the same as <see cref="BandAttention"/> speaks of.</summary>
    private const double Unlike = 0.5;

    private static string Settled(AttentionKind kind) => kind switch
    {
        AttentionKind.HubSlip => "Settled by: a new hub, and a later inspection with the verdict fit.",
        AttentionKind.Repair => "Settled by: the repair, and a later inspection that says fit and sees none of it.",
        _ => "Settled by: a look at prop and shaft, recorded with the verdict fit.",
    };

    /// <summary>What may be behind it: what its trials leave where they speak of the same side, else the usual list.</summary>
    private static string Causes(MountingFinding mounting, PositionFinding position)
    {
        var side = mounting.Band.State == BandState.BelowBottom || (mounting.Band.State != BandState.AboveTop && mounting.Exit.Edge == BandEdge.Bottom) ? CauseGroup.RpmDown : CauseGroup.RpmUp;
        var told = mounting.PointsTo is { } points && points.Group == side && CauseWords.Of(points).Length > 0
            ? points.Named is { } one ? [CauseWords.Word(one)] : points.Tied.Where(c => c != Cause.None).Select(CauseWords.Word).ToList()
            : mounting.Causes;
        return told.Count == 0 || position.Mounting is null ? "" : $" May be {Or([.. told.Take(MostCauses)])}.";
    }

    /// <summary>The cheapest test that would part what its trials leave, else what is usually done.</summary>
    private static string Next(MountingFinding mounting, string usual) =>
        mounting.PointsTo is { Tests: [var test, ..] } points && CauseWords.Of(points).Length > 0 ? Do(SeparatingTests.Words(test)) : Do(usual);

    private static string Do(string act) => $"Next: {act}.";

    private static string Alarm(MountingFinding mounting) => $"drift alarm since {mounting.Watch?.RaisedOn:yyyy-MM-dd}{(mounting.Drift is { } d ? $": {Rate(d)}" : "")}";

    private static string Rate(Statistics.Estimate drift) => $"{drift.Value:+0;-0;0} RPM per 100 h ({drift.Low:+0;-0;0} to {drift.High:+0;-0;0})";

    private static string Or(IReadOnlyList<string> some) => some.Count < 2 ? string.Concat(some) : $"{string.Join(", ", some.SkipLast(1))} or {some[^1]}";

    private static string Upper(string text) => text.Length == 0 ? "" : $"{char.ToUpperInvariant(text[0])}{text[1..]}";

    private static PositionFinding? At(BoatFinding finding, Attention matter) => finding.Positions.FirstOrDefault(p => p.Position == matter.Position);

    private static int Rank(AttentionKind kind) => kind switch { AttentionKind.OutsideBand => 0, AttentionKind.OutOfLine => 1, AttentionKind.LeavingBand => 2, AttentionKind.Drifting => 3, _ => 4 };

    private static double Margin(BoatFinding finding) =>
        finding.Positions.Where(p => p.Mounting is not null).Select(p => Standings.Of(p).MarginRpm ?? double.MaxValue).DefaultIfEmpty(double.MaxValue).Min();
}
