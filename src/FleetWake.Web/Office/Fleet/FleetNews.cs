using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Fleet;

/// <summary>Something that happened since yesterday: a strike, a boat taken out of hire, a verdict that keeps it.</summary>
/// <param name="Boat">The boat.</param>
/// <param name="Name">Its name.</param>
/// <param name="What">What happened.</param>
public sealed record FleetNews(string Boat, string Name, string What)
{
    /// <summary>What a morning shows: more is read in the rows.</summary>
    private const int Most = 12;

    internal static IReadOnlyList<FleetNews> Of(IEnumerable<BoatFinding> findings, Func<BoatFinding, DateOnly> today, Measures measures) =>
        [.. findings.Where(f => f.Retired is null).SelectMany(f => Of(f, today(f).AddDays(-1), measures)).OrderByDescending(n => n.On).ThenBy(n => n.News.Name, StringComparer.OrdinalIgnoreCase).Take(Most).Select(n => n.News)];

    private static IEnumerable<(DateOnly On, FleetNews News)> Of(BoatFinding boat, DateOnly since, Measures measures)
    {
        var (t, name) = (PageTexts.English, Phrases.Plain(boat.DisplayName()));
        (DateOnly, FleetNews) News(DateOnly on, string what) => (on, new FleetNews(boat.Boat, name, $"{what}, {measures.Date(on)}"));
        if (boat.Hold is { } hold && hold.On >= since) yield return News(hold.On, t.With("fleet.news-held", ("why", Words.Prose(hold.Why))));
        foreach (var position in boat.Positions)
        {
            foreach (var strike in position.OpenStrikes.Where(s => s.On >= since)) yield return News(strike.On, t.With("fleet.news-strike", ("how", Words.Prose(strike.Severity))));
            foreach (var look in position.Uncleared.Where(i => i.On >= since)) yield return News(look.On, t.With("fleet.news-verdict", ("verdict", Words.Prose(look.Verdict))));
            if (position.Damage is { } damage && damage.On >= since) yield return News(damage.On, t["fleet.news-damage"]);
        }
    }
}
