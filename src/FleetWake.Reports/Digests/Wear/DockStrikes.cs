using System.Globalization;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests.Wear;

/// <summary>Strikes by dock: how often, and whether those of late cluster at one.</summary>
internal static class DockStrikes
{
    /// <summary>Strikes of so many days are looked at for a cluster [days]; judgement.</summary>
    private const int RecentDays = 28;

    /// <summary>Fewer at one dock are no cluster; judgement.</summary>
    private const int FewestOfCluster = 3;

    /// <summary>A cluster is told of when chance alone would heap so many at that dock more seldom than this [1]; one-sided binomial by its share of the boats.</summary>
    private const double Seldom = 0.05;

    /// <summary>Strikes that left a mark by dock, the worst first, with 80 % limits. Docks without known hours are left out.</summary>
    public static IReadOnlyList<string> Rates(WearNews news) =>
    [
        .. (news.Strikes?.ByDock ?? []).Where(d => news.Dock is null || d.Group == news.Dock)
            .Where(d => d.Marked is not null).OrderByDescending(d => Rate(d).Value).ThenBy(d => d.Name, StringComparer.Ordinal)
            .Select(d => string.Create(CultureInfo.InvariantCulture, $"{Phrases.Plain(d.Name)}: {Rate(d).Value:0.0} per 1,000 engine hours ({Rate(d).Low:0.0} to {Rate(d).High:0.0}), {d.LeftMark} in {d.EngineHours:#,##0} h.")),
    ];

    /// <summary>Drawn towards the other docks as far as its own record is short, where there are others.</summary>
    private static Limits Rate(StrikeRate dock) => dock.Marked!.Shrunk ?? dock.Marked.Exact;

    /// <summary>A dock at which the marks of the last four weeks heap up.</summary>
    public static IEnumerable<MondayRow> Cluster(IReadOnlyList<BoatFinding> findings, DateOnly day, WearNews news)
    {
        var boats = (news.Everywhere ?? findings).Where(f => f is { Retired: null, Registered: not null } && !f.IsLaidUp()).GroupBy(f => f.Registered!.Dock, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal).ToList();
        if (boats.Count < 2) yield break;
        var counts = boats.Select(g => (Dock: g.Key, Boats: g.Count(), Strikes: g.Sum(f => Recent(f, day)))).ToList();
        var (all, fleet) = (counts.Sum(c => c.Strikes), counts.Sum(c => c.Boats));
        foreach (var dock in counts.Where(c => (news.Dock is null || c.Dock == news.Dock) && c.Strikes >= FewestOfCluster && Tail(all, c.Strikes, (double)c.Boats / fleet) < Seldom))
        {
            var name = news.DockName(dock.Dock);
            yield return new MondayRow(
                "strikes", $"{dock.Strikes} of the fleet's {all} strikes that left a mark in four weeks were of {Phrases.Plain(name)}, which has {dock.Boats} of its {fleet} boats: look at what lies there, and tell the renters.",
                news.Link("office/claims"));
        }
    }

    private static int Recent(BoatFinding finding, DateOnly day) => finding.Positions.SelectMany(p => p.Struck).DistinctBy(s => s.Entry).Count(s => s.On <= day && s.On > day.AddDays(-RecentDays));

    /// <summary>Chance of at least so many of n, each with a chance of its own.</summary>
    internal static double Tail(int n, int least, double share)
    {
        var (term, sum) = (Math.Pow(1 - share, n), 0.0);
        for (var k = 0; k <= n; k++)
        {
            if (k >= least) sum += term;
            term *= share >= 1 ? 0 : (n - k) / (k + 1.0) * share / (1 - share);
        }

        return share >= 1 ? 1 : Math.Min(1, sum);
    }
}
