using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Photos;

/// <summary>Notes and photos of an operator, to be looked through and erased: people write names into notes, and stand in photos.</summary>
public sealed class BesideBook(NpgsqlDataSource source)
{
    /// <summary>How many stand on a page.</summary>
    public const int PageSize = 48;

    private const string Newest =
        "select entry, 0, text, null, device, put_at from " + DockTables.Notes + " where operator = $1"
        + " union all select entry, n, null, hash, device, put_at from " + DockTables.EntryPhotos + " where operator = $1"
        + " order by put_at desc, entry, 2 limit $2 offset $3";

    // A photo that was just put and has no place yet is not one that nobody has.
    private const string Collect =
        "delete from " + DockTables.Photos + " p where p.operator = $1 and p.made_at < now() - interval '1 hour'"
        + " and not exists (select from " + DockTables.EntryPhotos + " e where e.operator = p.operator and e.hash = p.hash)";

    /// <summary>The newest first.</summary>
    /// <param name="operator">The operator.</param>
    /// <param name="page">Which page, from 1.</param>
    /// <param name="ct">Ends the work.</param>
    public Task<IReadOnlyList<BesideEntry>> OfAsync(string @operator, int page, CancellationToken ct) => source.ReadAsync(
        Newest, r => new BesideEntry(r.GetGuid(0), r.GetInt32(1), r.Text(2), r.Text(3), r.GetString(4), r.Moment(5)), ct, @operator, PageSize, (Math.Max(page, 1) - 1) * PageSize);

    /// <summary>Bytes that the photos of an operator take, and how many notes and photos there are.</summary>
    public async Task<(long Bytes, int Count)> RoomAsync(string @operator, CancellationToken ct) => (await source.ReadAsync(
        "select (select coalesce(sum(bytes), 0)::bigint from " + DockTables.Photos + " where operator = $1),"
        + " (select count(*) from " + DockTables.EntryPhotos + " where operator = $1)::int + (select count(*) from " + DockTables.Notes + " where operator = $1)::int",
        r => (r.GetInt64(0), r.GetInt32(1)), ct, @operator))[0];

    /// <summary>Erases the note of an entry; false when it has none.</summary>
    public async Task<bool> EraseNoteAsync(string @operator, Guid entry, CancellationToken ct) =>
        await source.RunAsync("delete from " + DockTables.Notes + " where operator = $1 and entry = $2", ct, @operator, entry) > 0;

    /// <summary>Erases a photo of an entry, and its bytes where no other entry has them; false when there is none.</summary>
    public async Task<bool> ErasePhotoAsync(string @operator, Guid entry, int n, CancellationToken ct)
    {
        var hash = (await source.ReadAsync(
            "delete from " + DockTables.EntryPhotos + " where operator = $1 and entry = $2 and n = $3 returning hash", r => r.GetString(0), ct, @operator, entry, n)).FirstOrDefault();
        if (hash is null) return false;
        await source.RunAsync(
            "delete from " + DockTables.Photos + " p where operator = $1 and hash = $2 and not exists (select from " + DockTables.EntryPhotos + " e where e.operator = $1 and e.hash = $2)", ct, @operator, hash);
        return true;
    }

    /// <summary>Lets go of photos that no entry has any more, because another took their place; returns how many.</summary>
    internal static Task<int> CollectAsync(NpgsqlDataSource source, string @operator, CancellationToken ct) => source.RunAsync(Collect, ct, @operator);
}

/// <summary>A note or a photo beside an entry.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="N">Number of the photo among the entry's; 0 for its note.</param>
/// <param name="Text">The note.</param>
/// <param name="Hash">Hash of the photo.</param>
/// <param name="Device">The phone that sent it.</param>
/// <param name="PutAt">When it came.</param>
public sealed record BesideEntry(Guid Entry, int N, string? Text, string? Hash, string Device, DateTimeOffset PutAt);
