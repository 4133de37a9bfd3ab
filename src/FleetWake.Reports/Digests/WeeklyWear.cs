using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Reports.Pictures;
using FleetWake.Reports.Pictures.Fleet;

namespace FleetWake.Reports.Digests;

/// <summary>Puts the findings of one operator into a weekly wear digest. Pure: the day is passed in.</summary>
public static class WeeklyWear
{
    /// <summary>Name of the digest in subscriptions, ledgers and headers.</summary>
    public const string Digest = Logbook.Mail.DigestNames.WeeklyWear;

    /// <summary>Most charts in a digest, the fleet's strip among them: more would not be looked at, and each adds some 100 KB to the message.</summary>
    public const int MostCharts = 5;

    /// <summary>Most CUSUM pictures in a digest, where there is room for them.</summary>
    public const int MostSums = 2;

    /// <summary>Most rows in a list: mail programs cut a message off at about 100 KB. The rest is named in a sentence.</summary>
    public const int MostRows = 60;

    /// <summary>Most decisions told in full; the rest is named, those that keep a boat first.</summary>
    public const int MostDecisions = 24;

    /// <summary>Most lines of what is overdue, of what falls due, and of boats without a trial.</summary>
    public const int MostDue = 20;

    /// <summary>Most names in a sentence.</summary>
    private const int MostNames = 100;

    /// <summary>How far ahead due work is listed [days].</summary>
    public const int SoonDays = 14;

    /// <summary>The digest of a week.</summary>
    /// <param name="operatorName">The operator's name.</param>
    /// <param name="period">ISO week, e.g. <c>2026-W47</c>.</param>
    /// <param name="day">The day on which it is told, in the docks' calendar.</param>
    /// <param name="findings">The operator's boats, in any order.</param>
    /// <param name="stale">Ids of boats whose record is newer than their finding; each is named, for silence would say that all is well.</param>
    /// <param name="policy">The operator's policy; the usual one when left out.</param>
    /// <param name="news">What is told beside the findings.</param>
    public static WeeklyWearContent Build(
        string operatorName, string period, DateOnly day, IReadOnlyList<BoatFinding> findings, IReadOnlyList<string>? stale = null, FleetPolicy? policy = null, WearNews? news = null)
    {
        news ??= WearNews.None;
        var dock = news.Dock is { } id ? Phrases.Plain(news.Office.Docks.FirstOrDefault(d => d.Dock == id)?.Name ?? id) : null;
        var name = dock is null ? Phrases.Plain(operatorName) : $"{Phrases.Plain(operatorName)}, {dock}";
        var ordered = findings.OrderBy(f => f.DisplayName(), StringComparer.OrdinalIgnoreCase).ThenBy(f => f.Boat, StringComparer.Ordinal).ToList();
        var strip = FleetStrip.Of(ordered, dock ?? operatorName);
        var charts = Charts.Of(ordered);
        var shown = charts.Take(MostCharts - (strip is null ? 0 : 1)).ToList();
        var room = MostCharts - (strip is null ? 0 : 1) - shown.Count;
        var decisions = Decisions.WithStale(Decisions.Of(ordered, day, policy, news, shown.Select(c => c.Picture.Boat).ToHashSet(StringComparer.Ordinal)), ordered, stale ?? []);
        var due = ordered.SelectMany(f => Outlook.Of(f, day, policy).Select(d => (Finding: f, Item: d))).OrderByDescending(d => d.Item.DaysOverdue).ToList();
        var overdue = due.Where(d => d.Item.Overdue()).ToList();
        var soon = due.Where(d => !d.Item.Overdue() && d.Item.DaysOverdue >= -SoonDays).ToList();
        var rows = BoatRows.Of(ordered, decisions, policy);
        var most = Math.Max(MostRows - Math.Min(decisions.Count, MostDecisions), MostDue);
        var trials = TrialsWorth.Of(ordered, day, policy);
        return new WeeklyWearContent(
            name,
            Phrases.Plain(period),
            day,
            Subject(name, period, decisions.Count, overdue.Count),
            Headline(decisions, [.. overdue.Select(d => d.Item)], Span(period)),
            [.. decisions.Take(MostDecisions)],
            [.. shown.Select(c => c.Picture)],
            [.. shown.Select(c => c.Sums).OfType<CusumPicture>().Take(Math.Min(room, MostSums))],
            charts.Count > shown.Count ? $"No room for charts of: {Names(charts.Skip(shown.Count).Select(c => c.Name))}." : null,
            StepLines.Of(ordered, day),
            trials.Rows,
            trials.LeftOut,
            [.. overdue.Take(MostDue).Select(d => Due(d.Finding, d.Item))],
            [.. soon.Take(MostDue).Select(d => Due(d.Finding, d.Item))],
            [.. rows.Take(most)],
            rows.Count > most ? $"Wider margins, not listed here: {Names(rows.Skip(most).Select(r => r.Name))}." : null,
            Cut(BoatRows.WithoutTrials(ordered)),
            DigestNotes.Method(ordered),
            DigestNotes.Caution(ordered))
        {
            Monday = MondayRows.Of(ordered, day, policy, news),
            Strip = strip,
            Changes = WearChanges.Of(ordered, news, day),
            Since = news.Since,
            InShop = StoreLines.Shop(day, news),
            SparesToOrder = StoreLines.Order(news),
            StrikesByDock = DockStrikes.Rates(news),
            DataQuality = DataQuality.Of(ordered, day),
            OfficeLink = news.Link("office"),
            DecisionsLeftOut = decisions.Count > MostDecisions ? $"To decide as well: {Names(decisions.Skip(MostDecisions).Select(d => d.Blocks ? $"{d.Boat} ({d.State})" : d.Boat))}." : null,
            DueLeftOut = Left(overdue.Count, "overdue") is var late && Left(soon.Count, "due within 14 days") is var next && (late ?? next) is not null ? $"{string.Join(" and ", new[] { late, next }.OfType<string>())}: see the due list." : null,
        };
    }

    private static string Names(IEnumerable<string> names)
    {
        var all = names.ToList();
        return all.Count <= MostNames ? string.Join("; ", all) : $"{string.Join("; ", all.Take(MostNames))}; and {all.Count - MostNames} more, in the office";
    }

    private static string? Left(int count, string what) => count > MostDue ? $"{count - MostDue} more {what}" : null;

    private static IReadOnlyList<string> Cut(IReadOnlyList<string> lines) => lines.Count <= MostDue ? lines : [.. lines.Take(MostDue), $"And {lines.Count - MostDue} more."];

    /// <summary>What the digest is of, as a headline has it.</summary>
    private static string Span(string period) => period.Contains('W', StringComparison.Ordinal) ? "this week" : period.Length == 7 ? "this month" : "today";

    private static string Subject(string name, string period, int decisions, int overdue)
    {
        var week = Phrases.Plain(Periods.Prose(period));
        var news = (decisions, overdue) switch
        {
            (0, 0) => "nothing to decide",
            (0, _) => $"{overdue} overdue",
            (_, 0) => Phrases.Count(decisions, "decision"),
            _ => $"{Phrases.Count(decisions, "decision")}, {overdue} overdue",
        };
        return $"{name}, {week}: {news}";
    }

    private static string Headline(IReadOnlyList<DecisionItem> decisions, IReadOnlyList<DueItem> overdue, string span)
    {
        var blocked = decisions.Count(d => d.State == Decisions.NotForHire);
        var look = decisions.Count(d => d.State == Decisions.LookFirst);
        var thing = overdue.All(d => d.Kind is DutyKind.AfterStrikeInspection or DutyKind.SixMonthlyInspection or DutyKind.BeforeRelaunch)
            ? (One: "inspection", Many: "inspections")
            : (One: "duty", Many: "duties");
        var late = overdue.Count == 0 ? "" : overdue.Count == 1 ? $"1 {thing.One} is overdue" : $"{overdue.Count} {thing.Many} are overdue";
        if (decisions.Count == 0) return late.Length == 0 ? $"Nothing to decide {span}." : $"Nothing to decide {span}; {late}.";
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
