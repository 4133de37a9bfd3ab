using System.Globalization;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using FleetWake.Store.Photos;
using FleetWake.Store.Quarantine;
using FleetWake.Web.Api;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Dock;

/// <summary>What stands beside an entry and is no fact: a note, photos. They may come before the entry or after it.</summary>
internal static partial class EntriesApi
{
    private const int MostFates = 500;
    private const string CapturedAt = "FleetWake-Captured-At";
    private const string OriginalHash = "FleetWake-Original-Sha256";

    public static void MapEntries(this IEndpointRouteBuilder dock)
    {
        dock.MapPost("entries/fates", FatesAsync);
        dock.MapPut("entries/{entry:guid}/note", NoteAsync);
        dock.MapPut("entries/{entry:guid}/photos/{n:int}", PhotoAsync);
    }

    /// <summary>What the office decided about entries that were kept back. The entries themselves are not sent again: from a phone that was enrolled anew they would pass.</summary>
    private static async Task<IResult> FatesAsync(HttpContext http, QuarantineBook quarantine)
    {
        var (sent, wrong) = await JsonBody.ReadAsync<FatesRequest>(http);
        if (wrong is not null) return wrong;
        if (sent!.Entries is not { Count: <= MostFates } entries) return Problems.Field("/entries", "too_many", $"ask about at most {MostFates} entries at once");
        var states = await quarantine.StatesAsync(http.User.OperatorOf(), entries, http.RequestAborted);
        return Results.Json(new FatesAnswer([.. entries.Where(states.ContainsKey).Select(e => new EntryFate(e, states[e]))]));
    }

    private static async Task<IResult> NoteAsync(Guid entry, HttpContext http, EntryNotes notes)
    {
        var (sent, wrong) = await JsonBody.ReadAsync<NoteRequest>(http);
        if (wrong is not null) return wrong;
        var text = sent!.Text?.Trim() ?? "";
        if (text.Length > EntryNotes.MostCharacters) return Problems.Field("/text", "too_long", $"a note has at most {EntryNotes.MostCharacters} characters; this one has {text.Length}");
        if (text.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'))) return Problems.Field("/text", "not_a_text", "a note holds letters, signs and line ends, no control characters");
        return await notes.PutAsync(http.User.OperatorOf(), entry, text, http.User.DeviceOf(), http.RequestAborted) ? Results.NoContent() : OfAnother("note");
    }

    private static async Task<IResult> PhotoAsync(Guid entry, int n, HttpContext http, EntryPhotos photos, PhotoEncoding encoding)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        if (n is < 1 or > EntryPhotos.MostOfEntry) return Problems.Field("/n", "out_of_range", $"an entry has photos 1 to {EntryPhotos.MostOfEntry}");
        if (http.Request.ContentType is not ("image/jpeg" or "image/png" or "image/webp"))
            return Problems.Make(StatusCodes.Status415UnsupportedMediaType, "photo-kind", "Send the photo as image/jpeg, image/png or image/webp.", []);
        var head = http.Request.Headers;
        if (head[OriginalHash].ToString() is { Length: > 0 } original && !Sha256().IsMatch(original)) return Problems.Field(OriginalHash, "not_a_hash", "give the SHA-256 of the phone's file as 64 hex digits");
        DateTimeOffset? captured = null;
        if (head[CapturedAt].ToString() is { Length: > 0 } text)
        {
            if (!DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var at)) return Problems.Field(CapturedAt, "not_a_time", "give when the photo was taken, as in 2026-05-03T10:15:00+12:00");
            captured = at;
        }

        if (await BytesAsync(http, ct) is not { } bytes)
            return Problems.Make(StatusCodes.Status413PayloadTooLarge, "photo-too-large", $"Send at most {PhotoRules.MostBytes / (1024 * 1024)} MB a photo: make it smaller first.", []);
        var sent = Convert.ToHexStringLower(SHA256.HashData(bytes));
        if (await photos.AgainAsync(tenant, entry, n, sent, ct) is { } again) return Results.Json(new PhotoAnswer(again));
        var (jpeg, problem) = await encoding.EncodeAsync(bytes, http.Request.ContentType, ct);
        if (jpeg is null) return Problems.Make(StatusCodes.Status422UnprocessableEntity, "photo-refused", problem!, []);
        var origin = new PhotoOrigin(http.User.DeviceOf(), sent, head[OriginalHash].ToString() is { Length: > 0 } hash ? hash.ToLowerInvariant() : null, captured);
        var kept = await photos.PutAsync(tenant, entry, n, jpeg, origin, ct);
        return kept.Hash is { } place ? Results.Json(new PhotoAnswer(place))
            : kept.Full ? Problems.Make(StatusCodes.Status507InsufficientStorage, "photos-full", "The operator's photos fill their room. The entry itself is kept; keep the photo on the phone, and tell the office.", [])
            : OfAnother("photo");
    }

    private static async Task<byte[]?> BytesAsync(HttpContext http, CancellationToken ct)
    {
        if (http.Request.ContentLength > PhotoRules.MostBytes) return null;
        var read = new MemoryStream();
        var buffer = new byte[64 * 1024];
        int count;
        while ((count = await http.Request.Body.ReadAsync(buffer, ct)) > 0)
        {
            // A body that does not tell its length is not read to its end.
            if (read.Length + count > PhotoRules.MostBytes) return null;
            read.Write(buffer, 0, count);
        }

        return read.ToArray();
    }

    private static IResult OfAnother(string what) =>
        Problems.Make(StatusCodes.Status409Conflict, "of-another-phone", $"Another phone put the {what} of this entry: it stays as it is.", []);

    [GeneratedRegex(@"\A[0-9A-Fa-f]{64}\z")]
    private static partial Regex Sha256();
}

/// <summary>A phone asks what became of entries that were kept back.</summary>
/// <param name="Entries">Their ids.</param>
internal sealed record FatesRequest(IReadOnlyList<Guid>? Entries);

/// <summary>What became of them; entries that were never kept back are left out.</summary>
/// <param name="Fates">One an entry.</param>
internal sealed record FatesAnswer(IReadOnlyList<EntryFate> Fates);

/// <summary>What became of an entry that was kept back.</summary>
/// <param name="Entry">Its id.</param>
/// <param name="State">Whether somebody decided.</param>
internal sealed record EntryFate(Guid Entry, KeptState State);

/// <summary>A note.</summary>
/// <param name="Text">Its text; an empty one takes the note away.</param>
internal sealed record NoteRequest(string? Text);

/// <summary>A photo is kept.</summary>
/// <param name="Hash">SHA-256 of the photo as kept.</param>
internal sealed record PhotoAnswer(string Hash);
