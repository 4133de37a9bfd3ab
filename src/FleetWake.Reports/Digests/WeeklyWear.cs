using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>Puts the findings of one operator into a weekly wear digest. Pure: the day is passed in.</summary>
public static class WeeklyWear
{
    /// <summary>Name of the digest in subscriptions, ledgers and headers.</summary>
    public const string Digest = Logbook.Mail.DigestNames.WeeklyWear;

    /// <summary>Most charts in a digest: more would not be looked at, and each adds some 100 KB to the message.</summary>
    public const int MostCharts = 5;

    /// <summary>Most CUSUM pictures in a digest.</summary>
    public const int MostSums = 2;

    /// <summary>Most rows in a list: mail programs cut a message off at about 100 KB. The rest is named in a sentence.</summary>
    public const int MostRows = 60;

    /// <summary>How far ahead due work is listed [days].</summary>
    public const int SoonDays = 14;

    /// <summary>The digest of a week.</summary>
    /// <param name="operatorName">The operator's name.</param>
    /// <param name="period">ISO week, e.g. <c>2026-W47</c>.</param>
    /// <param name="day">The day on which it is told, in the docks' calendar.</param>
    /// <param name="findings">The operator's boats, in any order.</param>
    /// <param name="stale">Ids of boats whose record is newer than their finding; each is named, for silence would say that all is well.</param>
    /// <param name="policy">The operator's policy; the usual one when left out.</param>
    public static WeeklyWearContent Build(
        string operatorName, string period, DateOnly day, IReadOnlyList<BoatFinding> findings, IReadOnlyList<string>? stale = null, FleetPolicy? policy = null)
    {
        var name = Phrases.Plain(operatorName);
        var ordered = findings.OrderBy(f => f.DisplayName(), StringComparer.OrdinalIgnoreCase).ThenBy(f => f.Boat, StringComparer.Ordinal).ToList();
        var decisions = Decisions.WithStale(Decisions.Of(ordered, policy), ordered, stale ?? []);
        var due = ordered.SelectMany(f => Outlook.Of(f, day, policy).Select(d => (Finding: f, Item: d))).OrderByDescending(d => d.Item.DaysOverdue).ToList();
        var overdue = due.Where(d => d.Item.Overdue()).ToList();
        var soon = due.Where(d => !d.Item.Overdue() && d.Item.DaysOverdue >= -SoonDays).ToList();
        var rows = BoatRows.Of(ordered, decisions, policy);
        var charts = Charts.Of(ordered);
        var trials = TrialsWorth.Of(ordered, day, policy);
        return new WeeklyWearContent(
            name,
            Phrases.Plain(period),
            day,
            Subject(name, period, decisions.Count, overdue.Count),
            Headline(decisions, [.. overdue.Select(d => d.Item)]),
            decisions,
            [.. charts.Take(MostCharts).Select(c => c.Picture)],
            [.. charts.Take(MostCharts).Select(c => c.Sums).OfType<CusumPicture>().Take(MostSums)],
            charts.Count > MostCharts ? $"No room for charts of: {string.Join("; ", charts.Skip(MostCharts).Select(c => c.Name))}." : null,
            StepLines.Of(ordered, day),
            trials.Rows,
            trials.LeftOut,
            [.. overdue.Select(d => Due(d.Finding, d.Item))],
            [.. soon.Select(d => Due(d.Finding, d.Item))],
            [.. rows.Take(MostRows)],
            rows.Count > MostRows ? $"Wider margins, not listed here: {string.Join("; ", rows.Skip(MostRows).Select(r => r.Name))}." : null,
            BoatRows.WithoutTrials(ordered),
            DigestNotes.Method(ordered),
            DigestNotes.Caution(ordered));
    }

    private static string Subject(string name, string period, int decisions, int overdue)
    {
        var week = Phrases.Plain(period).Split("-W") is [_, var number] ? $"week {number.TrimStart('0')}" : Phrases.Plain(period);
        var news = (decisions, overdue) switch
        {
            (0, 0) => "nothing to decide",
            (0, _) => $"{overdue} overdue",
            (_, 0) => Phrases.Count(decisions, "decision"),
            _ => $"{Phrases.Count(decisions, "decision")}, {overdue} overdue",
        };
        return $"{name}, {week}: {news}";
    }

    private static string Headline(IReadOnlyList<DecisionItem> decisions, IReadOnlyList<DueItem> overdue)
    {
        var blocked = decisions.Count(d => d.State == Decisions.NotForHire);
        var look = decisions.Count(d => d.State == Decisions.LookFirst);
        var thing = overdue.All(d => d.Kind is DutyKind.AfterStrikeInspection or DutyKind.SixMonthlyInspection or DutyKind.BeforeRelaunch)
            ? (One: "inspection", Many: "inspections")
            : (One: "duty", Many: "duties");
        var late = overdue.Count == 0 ? "" : overdue.Count == 1 ? $"1 {thing.One} is overdue" : $"{overdue.Count} {thing.Many} are overdue";
        if (decisions.Count == 0) return late.Length == 0 ? "Nothing to decide this week." : $"Nothing to decide this week; {late}.";
        var need = decisions.Count == 1 ? "1 boat needs a decision" : $"{decisions.Count} boats need a decision";
        var notForHire = blocked == 0 ? "" : $", {blocked} of them not for hire";
        var lookFirst = look == 0 ? "" : $"{(blocked == 0 ? "," : " and")} {look} {(blocked == 0 ? "of them " : "")}to look at first";
        return $"{need}{notForHire}{lookFirst}{(late.Length == 0 ? "" : $"; {late}")}.";
    }

    private static DueRow Due(BoatFinding finding, DueItem item)
    {
        var name = finding.Positions.FirstOrDefault(p => p.Position == item.Position) is { } position ? Phrases.Name(finding, position) : Phrases.Plain(item.BoatName);
        var when = item.DaysOverdue switch
        {
            > 0 => $"{item.DueOn:yyyy-MM-dd}, {Phrases.Count(item.DaysOverdue, "day")} overdue",
            0 => $"{item.DueOn:yyyy-MM-dd}, today",
            _ => $"{item.DueOn:yyyy-MM-dd}, in {Phrases.Count(-item.DaysOverdue, "day")}",
        };
        var taken = item.TakenBy is { } by ? $"; taken by {by}" : "";
        return new DueRow(name, Phrases.Plain(item.Dock), Phrases.Plain(item.What), when, Phrases.Plain(item.Why + taken));
    }
}
