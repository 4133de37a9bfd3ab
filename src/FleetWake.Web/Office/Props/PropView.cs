using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Store.Histories;

namespace FleetWake.Web.Office.Props;

/// <summary>All that the page of a prop shows.</summary>
/// <param name="Life">Its life.</param>
/// <param name="Facts">Its own facts that count, in order.</param>
/// <param name="Strikes">Strikes while it was mounted, by mounting.</param>
/// <param name="Names">Names of the boats it was on.</param>
/// <param name="Remaining">What may be expected of it; null when the fleet is too large to reckon, or the prop is used up.</param>
/// <param name="TooManyBoats">How many boats there are, when those are too many to reckon with on request.</param>
public sealed record PropView(
    PropLife Life,
    IReadOnlyList<IFact> Facts,
    IReadOnlyDictionary<string, IReadOnlyList<StrikeReported>> Strikes,
    IReadOnlyDictionary<string, string> Names,
    RemainingLife? Remaining,
    int? TooManyBoats)
{
    /// <summary>What was paid for it, the newest first.</summary>
    public IEnumerable<PropCostTold> Costs => Facts.OfType<PropCostTold>().Reverse();

    /// <summary>Shops that it was sent to.</summary>
    public IEnumerable<string> Shops => Facts.OfType<PropSentToShop>().Select(s => s.Shop).Distinct(StringComparer.Ordinal);

    /// <summary>Boats on which it is by their mountings: more than one, or one while it is elsewhere, is for a person to settle.</summary>
    public IReadOnlyList<string> OnBoats => [.. Life.Mountings.Where(m => m.To is null).Select(m => m.Boat).Distinct(StringComparer.Ordinal)];

    /// <summary>It is on two boats at once, or on one and elsewhere, by the record.</summary>
    public bool InTwoPlaces => OnBoats.Count > 1 || (OnBoats.Count == 1 && Life.Place.Standing != PropStanding.Mounted);

    /// <summary>Whether it is a prop of the fleet's still.</summary>
    public bool InUse => Life.Place.Standing is not (PropStanding.Retired or PropStanding.GivenBack);

    /// <summary>Each repitch with the pitch before it: as the shop measured it, else as it went by then.</summary>
    public IEnumerable<(Repitched Fact, double? Before, bool Measured)> Repitches =>
        Facts.OfType<Repitched>().Select(r => (r, r.PitchBeforeInches ?? PropNumbers.Of(Facts.TakeWhile(f => !ReferenceEquals(f, r))).PitchInches, r.PitchBeforeInches is not null)).Reverse();

    /// <summary>Shops that any prop of the fleet was sent to.</summary>
    public IReadOnlyList<string> FleetShops { get; init; } = [];

    internal static async Task<PropView?> OfAsync(FleetReading reading, FleetLives lives, string tenant, string prop, CancellationToken ct)
    {
        if (await reading.SettledLogAsync(tenant, StreamName.Prop(prop), ct) is not { } settled || settled.Log.Facts.Count == 0) return null;
        var boats = await reading.HistoriesAsync(tenant, [.. Dossier.BoatsNamed(settled.Log)], ct);
        var life = PropLife.Of(settled.Log, boats);
        var (remaining, tooMany) = await lives.OfAsync(tenant, ct);
        return new PropView(
            life,
            settled.Counting.Facts,
            boats.SelectMany(b => b.Mountings.Where(m => m.Fitted.Prop == prop).Select(m => (m.Id, Strikes: b.Strikes.Where(s => s.Position == m.Fitted.Position && m.Holds(s.Entry)).ToList())))
                .ToDictionary(m => m.Id, m => (IReadOnlyList<StrikeReported>)m.Strikes, StringComparer.Ordinal),
            boats.ToDictionary(b => b.Boat, b => b.Registered?.Name ?? b.Boat, StringComparer.Ordinal),
            remaining?.GetValueOrDefault(prop),
            tooMany)
        {
            FleetShops = [.. (await reading.LogsAsync(tenant, await reading.StreamsWithAsync<PropSentToShop>(tenant, ct), ct)).Values.SelectMany(l => l.Facts).OfType<PropSentToShop>().Select(s => s.Shop).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
        };
    }
}
