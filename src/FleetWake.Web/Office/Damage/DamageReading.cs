using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Histories;
using FleetWake.Store.Photos;
using FleetWake.Web.Api.Reading;

namespace FleetWake.Web.Office.Damage;

/// <summary>Gathers claims out of boats' histories.</summary>
internal sealed class DamageReading(FleetReading reading, EntryPhotos photos)
{
    private const int AtATime = 32;

    /// <summary>Every claim: the open ones first, by their deadline.</summary>
    public async Task<IReadOnlyList<ClaimLine>> AllAsync(string tenant, CancellationToken ct)
    {
        var boats = (await reading.StreamsWithAsync<ClaimOpened>(tenant, ct)).Select(StreamName.BoatOf).OfType<string>().ToList();
        var lines = new List<ClaimLine>();
        foreach (var some in boats.Chunk(AtATime))
        {
            foreach (var history in await reading.HistoriesAsync(tenant, some, ct))
                lines.AddRange(Logbook.Claims.Claims.Of(history.Facts, history.Original).Select(c => new ClaimLine(c, history.Registered?.Name ?? history.Boat)));
        }

        return
        [
            .. lines.OrderBy(l => l.Card.State != ClaimState.Open).ThenBy(l => l.Card.State == ClaimState.Open ? l.Card.Deadline ?? DateOnly.MaxValue : DateOnly.MinValue)
                .ThenByDescending(l => l.Card.OpenedOn).ThenBy(l => l.Card.Claim),
        ];
    }

    /// <summary>A claim with all that its statement shows; null when there is none.</summary>
    public async Task<DamageView?> OneAsync(string tenant, Guid claim, CancellationToken ct)
    {
        var boats = await reading.BoatsOfEntryAsync(tenant, claim, ct);
        foreach (var history in await reading.HistoriesAsync(tenant, boats, ct))
        {
            if (DamageView.Of(history, claim, null) is not { } found) continue;
            var view = found with { Photos = (await photos.OfAsync(tenant, found.Shown, ct)).ToLookup(p => p.Entry) };
            var (fleet, _) = await FleetGathering.ReadAsync(reading, tenant, ct);
            return fleet is null ? view : view with { Charge = ClaimCharge.Of(fleet, view.Card.Claim) };
        }

        return null;
    }

    /// <summary>A boat of which a claim is to be opened; null when nothing is on record of it.</summary>
    public async Task<ClaimableBoat?> BoatAsync(string tenant, string boat, CancellationToken ct) =>
        (await reading.HistoriesAsync(tenant, [boat], ct)).FirstOrDefault(h => h.Facts.Count > 0) is { } history ? ClaimableBoat.Of(history) : null;
}
