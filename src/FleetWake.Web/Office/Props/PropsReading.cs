using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;

namespace FleetWake.Web.Office.Props;

/// <summary>
/// Gathers the list of props. What is stamped on them is read of all; where each is takes the histories of its boats, so
/// only as many are told as a page shows, and a search that finds few stops after a while and says how far it came.
/// </summary>
internal sealed class PropsReading(FleetReading reading)
{
    /// <summary>Most props on a page.</summary>
    public const int PageSize = 100;

    private const int MostTold = 600;
    private const int AtATime = 40;

    public async Task<PropsList> OfAsync(string tenant, PropsFilter filter, CancellationToken ct)
    {
        var streams = await reading.StreamsAsync(tenant, StreamName.Prop(""), ct);
        var stamped = (await reading.LogsAsync(tenant, streams, ct)).Values.Where(l => l.Facts.Count > 0).Select(Stamped.Of).OrderBy(s => s.Prop, StringComparer.Ordinal).ToList();
        var asked = stamped.Where(s => filter.Takes(s.Prop, s.Size, s.Material)).ToList();
        var rest = asked.Where(s => string.CompareOrdinal(s.Prop, filter.After) > 0).ToList();
        var (shown, there, told) = (new List<PropLife>(), new List<PropLife>(), 0);
        foreach (var some in rest.Chunk(AtATime))
        {
            foreach (var life in await reading.PropLivesAsync(tenant, [.. some.Select(s => s.Prop)], ct))
            {
                if (!filter.Takes(life.Place)) continue;
                there.Add(life);
                if (filter.Standing.Length == 0 || Words.Of(life.Place.Standing) == filter.Standing) shown.Add(life);
            }

            told += some.Length;
            if (shown.Count >= PageSize || told >= MostTold) break;
        }

        var last = shown.Count > PageSize ? shown[PageSize - 1].Prop : told < rest.Count ? rest[told - 1].Prop : null;
        return new PropsList(
            [.. shown.Take(PageSize)],
            // Only of a list that was told to its end can be said how many there are of each.
            last is null && filter.After.Length == 0 ? there.CountBy(l => l.Place.Standing).ToDictionary() : null,
            stamped.Count,
            last,
            [.. stamped.Select(s => s.Size).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)]);
    }

    private sealed record Stamped(string Prop, string? Size, PropMaterial? Material)
    {
        public static Stamped Of(FactLog log)
        {
            var facts = Effective.Of(log.Facts).Facts;
            var numbers = PropNumbers.Of(facts);
            return new Stamped(
                StreamName.PropOf(log.Id)!,
                numbers is { DiameterInches: { } d, PitchInches: { } p } ? PropWords.Size(d, p) : null,
                facts.OfType<PropRegistered>().FirstOrDefault()?.Material);
        }
    }
}

/// <summary>A page of props.</summary>
/// <param name="Shown">The props, by tag.</param>
/// <param name="Standings">How many are where; null when the list was not told to its end.</param>
/// <param name="All">How many props are on record.</param>
/// <param name="Next">The tag after which the next page begins; null when this is the last.</param>
/// <param name="Sizes">Every size on record.</param>
public sealed record PropsList(
    IReadOnlyList<PropLife> Shown, IReadOnlyDictionary<PropStanding, int>? Standings, int All, string? Next, IReadOnlyList<string> Sizes);
