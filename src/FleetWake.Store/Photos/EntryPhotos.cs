using System.Security.Cryptography;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Photos;

/// <summary>Photos beside entries: re-encoded before they come here, kept once each under the hash of their bytes.</summary>
public sealed class EntryPhotos(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>Photos of one entry.</summary>
    public const int MostOfEntry = 8;

    /// <summary>Bytes of all photos of an operator: some eight thousand photos.</summary>
    public const long MostBytes = 2L * 1024 * 1024 * 1024;

    private const string PutJpeg =
        "insert into " + DockTables.Photos + " (operator, hash, jpeg, bytes, width, height, made_at) select $1, $2, $3, $4, $5, $6, $7"
        + " where (select coalesce(sum(bytes), 0) from " + DockTables.Photos + " where operator = $1) + $4 <= $8 on conflict do nothing";

    private const string PutPlace =
        "insert into " + DockTables.EntryPhotos + " (operator, entry, n, hash, captured_at, original_hash, sent_hash, device, put_at) values ($1, $2, $3, $4, $5::timestamptz, $6::text, $7, $8, $9)"
        + " on conflict (operator, entry, n) do update set hash = excluded.hash, captured_at = excluded.captured_at, original_hash = excluded.original_hash,"
        + " sent_hash = excluded.sent_hash, put_at = excluded.put_at where entry_photos.device = excluded.device";

    /// <summary>The hash under which a photo is kept that was sent before just so; null when it was not.</summary>
    public async Task<string?> AgainAsync(string @operator, Guid entry, int n, string sentHash, CancellationToken ct) => (await source.ReadAsync(
        "select hash from " + DockTables.EntryPhotos + " where operator = $1 and entry = $2 and n = $3 and sent_hash = $4", r => r.GetString(0), ct, @operator, entry, n, sentHash)).FirstOrDefault();

    /// <summary>Keeps a photo of an entry.</summary>
    public async Task<PhotoKept> PutAsync(string @operator, Guid entry, int n, Jpeg photo, PhotoOrigin origin, CancellationToken ct)
    {
        var (now, hash) = (time.GetUtcNow(), Convert.ToHexStringLower(SHA256.HashData(photo.Bytes)));
        Task<int> PutAsync() => source.RunAsync(PutJpeg, ct, @operator, hash, photo.Bytes, photo.Bytes.Length, photo.Width, photo.Height, now, MostBytes);
        var put = await PutAsync();
        if (put == 0 && await BesideBook.CollectAsync(source, @operator, ct) > 0) put = await PutAsync();
        if (put == 0 && await FindAsync(@operator, hash, ct) is null) return new PhotoKept(null, Full: true);
        return await source.RunAsync(PutPlace, ct, @operator, entry, n, hash, origin.CapturedAt, origin.OriginalHash, origin.SentHash, origin.Device, now) > 0
            ? new PhotoKept(hash, Full: false)
            : new PhotoKept(null, Full: false);
    }

    /// <summary>The bytes of a photo of an operator; null when there is none.</summary>
    public async Task<byte[]?> FindAsync(string @operator, string hash, CancellationToken ct) =>
        (await source.ReadAsync("select jpeg from " + DockTables.Photos + " where operator = $1 and hash = $2", r => r.GetFieldValue<byte[]>(0), ct, @operator, hash)).FirstOrDefault();

    /// <summary>Photos of some entries, by entry and number.</summary>
    public Task<IReadOnlyList<EntryPhoto>> OfAsync(string @operator, IReadOnlyCollection<Guid> entries, CancellationToken ct) => source.ReadAsync(
        "select e.entry, e.n, e.hash, e.captured_at, e.original_hash, e.put_at, p.width, p.height from " + DockTables.EntryPhotos + " e join " + DockTables.Photos + " p using (operator, hash)"
        + " where e.operator = $1 and e.entry = any($2) order by e.entry, e.n",
        r => new EntryPhoto(r.GetGuid(0), r.GetInt32(1), r.GetString(2), r.MaybeMoment(3), r.Text(4), r.Moment(5), r.GetInt32(6), r.GetInt32(7)), ct, @operator, entries.ToArray());
}

/// <summary>A picture as it is kept: no metadata, no place.</summary>
/// <param name="Bytes">The JPEG.</param>
/// <param name="Width">Width [pixel].</param>
/// <param name="Height">Height [pixel].</param>
public sealed record Jpeg(byte[] Bytes, int Width, int Height);

/// <summary>Where a photo comes from.</summary>
/// <param name="Device">The phone.</param>
/// <param name="SentHash">SHA-256 of the bytes that it sent, lower-case hex.</param>
/// <param name="OriginalHash">SHA-256 of the file in the phone before it was made smaller, as the phone says.</param>
/// <param name="CapturedAt">When it was taken, as the phone says.</param>
public sealed record PhotoOrigin(string Device, string SentHash, string? OriginalHash, DateTimeOffset? CapturedAt);

/// <summary>What became of a photo.</summary>
/// <param name="Hash">Hash under which it is kept; null when it is not.</param>
/// <param name="Full">The operator's photos fill their room.</param>
public sealed record PhotoKept(string? Hash, bool Full);

/// <summary>A photo of an entry.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="N">Its number among the entry's photos, from 1.</param>
/// <param name="Hash">Hash under which it is kept.</param>
/// <param name="CapturedAt">When it was taken, as the phone says.</param>
/// <param name="OriginalHash">SHA-256 of the file in the phone, as the phone says.</param>
/// <param name="PutAt">When it came.</param>
/// <param name="Width">Width [pixel].</param>
/// <param name="Height">Height [pixel].</param>
public sealed record EntryPhoto(Guid Entry, int N, string Hash, DateTimeOffset? CapturedAt, string? OriginalHash, DateTimeOffset PutAt, int Width, int Height);
