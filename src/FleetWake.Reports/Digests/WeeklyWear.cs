using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
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

    /// <summary>Most rows of a list: the whole is to be read in two minutes on a phone. The rest is named or counted, and stands in the office.</summary>
    public const int MostRows = 10;

    /// <summary>Most decisions told in full; the rest is named.</summary>
    public const int MostDecisions = 10;

    /// <summary>Most names in a sentence.</summary>
    private const int MostNames = 40;

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
        if (ReferenceEquals(news.Things, NamedThings.None)) news = news with { Things = NamedThings.Of(news.Everywhere ?? findings) };
        var dock = news.Dock is { } id ? Phrases.Plain(news.DockName(id)) : null;
        var name = dock is null ? Phrases.Plain(operatorName) : $"{Phrases.Plain(operatorName)}, {dock}";
        var ordered = findings.OrderBy(f => f.DisplayName(), StringComparer.OrdinalIgnoreCase).ThenBy(f => f.Boat, StringComparer.Ordinal).ToList();
        var strip = FleetStrip.Of(ordered, dock ?? operatorName);
        var kept = KeptBoat.Of(ordered, policy);
        var decided = ordered.Where(f => !f.IsLaidUp() && Decisions.Matters(f, policy).Count > 0).Select(f => f.Boat).ToHashSet(StringComparer.Ordinal);
        var charts = Charts.Of(ordered, decided);
        var shown = charts.Take(MostCharts - (strip is null ? 0 : 1)).ToList();
        var room = MostCharts - (strip is null ? 0 : 1) - shown.Count;
        var decisions = Decisions.WithStale(Decisions.Of(ordered, day, policy, news, shown.Select(c => c.Picture.Boat).ToHashSet(StringComparer.Ordinal)), ordered, stale ?? [], news);
        var due = DueOf(ordered, kept, day, policy);
        var rows = BoatRows.Of(ordered, decided, news);
        var uncharted = charts.Skip(shown.Count).Where(c => decided.Contains(c.Picture.Boat)).ToList();
        var counts = new WearCounts(kept.Count, kept.Count(k => k.Word == HireWord.LookFirst), decisions.Count, ordered.Sum(f => f.Contradictions.Count), due.Overdue);
        var trials = TrialsWorth.Of(ordered, day, policy, news);
        return new WeeklyWearContent(
            name,
            Phrases.Plain(period),
            day,
            $"{name}, {Phrases.Plain(Periods.Prose(period))}: {counts.Short()}",
            counts.Sentence(Span(period)),
            [.. decisions.Take(MostDecisions)],
            [.. shown.Select(c => c.Picture)],
            [.. shown.Select(c => c.Sums).OfType<CusumPicture>().Take(Math.Min(room, MostSums))],
            uncharted.Count > 0 ? $"No room for charts of: {Names(uncharted.Select(c => c.Name))}." : null,
            StepLines.Of(ordered, day),
            trials.Rows,
            trials.LeftOut,
            [.. due.Listed.Take(MostRows).Select(d => DueRows.Row(d, news))],
            [.. rows.Take(MostRows)],
            Sentences(rows.Count > MostRows ? $"As near, or drifting too: {Names(rows.Skip(MostRows).Select(r => r.Name))}." : null, BoatRows.Others(ordered, decided)),
            BoatRows.WithoutTrials(ordered),
            DigestNotes.Method(ordered),
            DigestNotes.Caution(ordered))
        {
            Waiting = WaitingCost.Together(kept, news, day),
            Monday = MondayRows.Of(ordered, kept, day, news),
            Strip = strip,
            Changes = WearChanges.Of(ordered, news, day),
            Since = news.Since,
            InShop = StoreLines.Shop(day, news),
            SparesToOrder = StoreLines.Order(news),
            StrikesByDock = DockStrikes.Rates(news),
            DataQuality = DataQuality.Of(ordered, day),
            Questions = OpenQuestions.Of(ordered),
            LaidUp = Laid(ordered, policy),
            Links = new WearLinks(news.Link("office"), news.Link("office/due"), news.Link("office/questions"), news.Link("office/shop"), news.Link("office/spares"), news.Link("office/claims")),
            DecisionsLeftOut = decisions.Count > MostDecisions ? $"To decide as well: {Names(decisions.Skip(MostDecisions).Select(d => d.Boat))}." : null,
            DueLeftOut = DueRows.LeftOut(due),
        };
    }

    private static WearDue DueOf(IReadOnlyList<BoatFinding> findings, IReadOnlyList<KeptBoat> kept, DateOnly day, FleetPolicy? policy) =>
        WearDue.Of([.. findings.SelectMany(f => Outlook.Of(f, day, policy).Select(d => (Finding: f, Item: d))).OrderByDescending(d => d.Item.DaysOverdue)], kept);

    /// <summary>Nothing of a boat that is laid up changes Monday, but it must not be forgotten when it goes out again.</summary>
    private static string? Laid(IReadOnlyList<BoatFinding> findings, FleetPolicy? policy)
    {
        var names = findings.Where(f => f.IsLaidUp() && Attentions.Of(f, policy).Any(a => a.Kind is not AttentionKind.Contradiction)).Select(f => Phrases.Plain(f.DisplayName())).ToList();
        return names.Count == 0 ? null : $"Laid up, and not to go out before something is settled: {Names(names)}.";
    }

    private static string? Sentences(params string?[] sentences) => sentences.OfType<string>().ToList() is { Count: > 0 } said ? string.Join(" ", said) : null;

    private static string Names(IEnumerable<string> names)
    {
        var all = names.ToList();
        return all.Count <= MostNames ? string.Join("; ", all) : $"{string.Join("; ", all.Take(MostNames))}; and {all.Count - MostNames} more, in the office";
    }

    /// <summary>What the digest is of, as a headline has it.</summary>
    private static string Span(string period) => period.Contains('W', StringComparison.Ordinal) ? "this week" : period.Length == 7 ? "this month" : "today";
}
