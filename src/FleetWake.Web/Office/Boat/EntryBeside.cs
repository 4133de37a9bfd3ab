using FleetWake.Logbook.Entries;
using FleetWake.Store.Attribution;
using FleetWake.Store.Photos;

namespace FleetWake.Web.Office.Boat;

/// <summary>What lies beside entries and is no fact: who signed for them, notes, photos.</summary>
internal sealed class EntryBeside(DockSignatures signatures, EntryNotes notes, EntryPhotos photos)
{
    public async Task<(IReadOnlyDictionary<Guid, Attribution> Signed, IReadOnlyDictionary<Guid, string> Notes, ILookup<Guid, EntryPhoto> Photos)> OfAsync(
        string tenant, IReadOnlyCollection<Entry> entries, CancellationToken ct)
    {
        Guid[] ids = [.. entries.Select(e => e.Id)];
        return (
            await signatures.AttributionsAsync(tenant, entries, ct),
            await notes.OfAsync(tenant, ids, ct),
            (await photos.OfAsync(tenant, ids, ct)).ToLookup(p => p.Entry));
    }
}
