using System.Buffers.Binary;
using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using FleetWake.Logbook.People;
using FleetWake.Settings;
using FleetWake.Store.People;
using FleetWake.Store.Photos;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using SkiaSharp;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>Notes and photos beside entries; photos come from phones, and a phone may be in a stranger's hand.</summary>
public sealed class PhotoTests(PostgresFixture postgres) : IAsyncLifetime
{
    private static readonly Guid Entry = Guid.Parse("0196d7c1-8a35-7c5e-9a4e-0c6a52b7f001");
    private RunningFleet fleet = null!;
    private DockPhone phone = null!;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    private EntryPhotos Photos => fleet.Service<EntryPhotos>();

    public async ValueTask InitializeAsync()
    {
        fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("photos", Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), ct: Ct);
        phone = await DockPhone.EnrolledAsync(fleet);
    }

    public async ValueTask DisposeAsync()
    {
        phone.Dispose();
        await fleet.DisposeAsync();
    }

    [Fact]
    public async Task A_photo_is_drawn_anew_smaller_and_without_its_place_and_keeps_when_it_was_taken()
    {
        var sent = WithPlace(Picture(2400, 1200, SKEncodedImageFormat.Jpeg), orientation: 6);
        Assert.Contains("Skerry Bay GPS", Encoding.Latin1.GetString(sent), StringComparison.Ordinal);
        var original = Convert.ToHexStringLower(SHA256.HashData(sent));
        using var answer = await PutAsync(sent, "image/jpeg", headers: [("FleetWake-Captured-At", "2026-06-06T10:15:00+12:00"), ("FleetWake-Original-Sha256", original.ToUpperInvariant())]);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        var hash = (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!["hash"]!.GetValue<string>();
        var kept = (await Photos.FindAsync(RunningFleet.Operator, hash, Ct))!;
        Assert.Equal(hash, Convert.ToHexStringLower(SHA256.HashData(kept)));
        Assert.DoesNotContain("GPS", Encoding.Latin1.GetString(kept), StringComparison.Ordinal);
        Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(kept), StringComparison.Ordinal);

        // It was held upright: the longest side is the height now.
        using var codec = SKCodec.Create(new MemoryStream(kept));
        Assert.Equal((800, 1600, SKEncodedImageFormat.Jpeg), (codec.Info.Width, codec.Info.Height, codec.EncodedFormat));
        var told = Assert.Single(await Photos.OfAsync(RunningFleet.Operator, [Entry], Ct));
        Assert.Equal((1, original, new DateTimeOffset(2026, 6, 5, 22, 15, 0, TimeSpan.Zero)), (told.N, told.OriginalHash, told.CapturedAt));
    }

    [Fact]
    public async Task Other_kinds_become_the_same_kind()
    {
        foreach (var (format, type) in ((SKEncodedImageFormat, string)[])[(SKEncodedImageFormat.Png, "image/png"), (SKEncodedImageFormat.Webp, "image/webp")])
        {
            var hash = await HashAsync(await PutAsync(Picture(300, 200, format), type));
            using var codec = SKCodec.Create(new MemoryStream((await Photos.FindAsync(RunningFleet.Operator, hash, Ct))!));
            Assert.Equal((300, 200, SKEncodedImageFormat.Jpeg), (codec.Info.Width, codec.Info.Height, codec.EncodedFormat));
        }
    }

    [Fact]
    public async Task The_same_photo_again_is_the_same_and_another_takes_its_place()
    {
        var picture = Picture(300, 200, SKEncodedImageFormat.Jpeg);
        var first = await HashAsync(await PutAsync(picture, "image/jpeg"));
        Assert.Equal(first, await HashAsync(await PutAsync(picture, "image/jpeg")));
        Assert.NotEqual(first, await HashAsync(await PutAsync(Picture(200, 300, SKEncodedImageFormat.Jpeg), "image/jpeg")));
        Assert.Single(await Photos.OfAsync(RunningFleet.Operator, [Entry], Ct));

        using var other = await DockPhone.EnrolledAsync(fleet);
        Assert.Equal(HttpStatusCode.Conflict, (await PutAsync(picture, "image/jpeg", on: other)).StatusCode);
    }

    [Fact]
    public async Task What_is_no_photo_is_refused_with_what_to_do()
    {
        var picture = Picture(600, 400, SKEncodedImageFormat.Jpeg);
        Assert.Contains("first bytes", await RefusedAsync(picture, "image/png"), StringComparison.Ordinal);
        Assert.Contains("first bytes", await RefusedAsync("<svg onload=alert(1)>"u8.ToArray(), "image/jpeg"), StringComparison.Ordinal);
        Assert.Contains("first bytes", await RefusedAsync([], "image/jpeg"), StringComparison.Ordinal);
        Assert.Contains("cut off", await RefusedAsync(picture[..(picture.Length / 2)], "image/jpeg"), StringComparison.Ordinal);
        Assert.Contains("cut off", await RefusedAsync(picture[..20], "image/jpeg"), StringComparison.Ordinal);
        Assert.Contains("pixels", await RefusedAsync(HugePng(60_000, 60_000), "image/png"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await PutAsync(picture, "image/svg+xml")).StatusCode);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, (await PutAsync(new byte[(2 * 1024 * 1024) + 1], "image/jpeg")).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PutAsync(picture, "image/jpeg", n: 9)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PutAsync(picture, "image/jpeg", headers: [("FleetWake-Original-Sha256", "abc")])).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await PutAsync(picture, "image/jpeg", headers: [("FleetWake-Captured-At", "yesterday")])).StatusCode);
        Assert.Empty(await Photos.OfAsync(RunningFleet.Operator, [Entry], Ct));
    }

    [Fact]
    public async Task Whatever_is_flipped_in_a_photo_the_program_answers_and_lives()
    {
        var picture = Picture(120, 80, SKEncodedImageFormat.Jpeg);
        var flips = new Random(7);
        for (var i = 0; i < 200; i++)
        {
            var broken = (byte[])picture.Clone();
            for (var k = 0; k < 8; k++) broken[3 + flips.Next(broken.Length - 3)] = (byte)flips.Next(256);
            using var answer = await PutAsync(broken, "image/jpeg");
            Assert.True(answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.UnprocessableEntity, $"{i}: {answer.StatusCode}");
        }
    }

    [Fact]
    public async Task A_note_is_put_mended_and_taken_away_by_its_phone_alone()
    {
        var notes = fleet.Service<EntryNotes>();
        Assert.Equal(HttpStatusCode.NoContent, (await NoteAsync("Blade 2 has a nick,\nthumbnail wide.")).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await NoteAsync("Blade 3.")).StatusCode);
        Assert.Equal("Blade 3.", (await notes.OfAsync(RunningFleet.Operator, [Entry], Ct))[Entry]);
        using var other = await DockPhone.EnrolledAsync(fleet);
        Assert.Equal(HttpStatusCode.Conflict, (await NoteAsync("Nothing.", other)).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await NoteAsync(new string('x', 1001))).StatusCode);
        Assert.Equal(HttpStatusCode.NoContent, (await NoteAsync("")).StatusCode);
        Assert.Empty(await notes.OfAsync(RunningFleet.Operator, [Entry], Ct));
        Assert.Empty(await notes.OfAsync("somebody-else", [Entry], Ct));
    }

    [Fact]
    public async Task What_an_administrator_erases_is_gone_and_who_did_it_is_noted()
    {
        var hash = await HashAsync(await PutAsync(Picture(300, 200, SKEncodedImageFormat.Jpeg), "image/jpeg"));
        await NoteAsync("Handed in by a hirer, name on the form.");
        using var operatorsBrowser = await SignInHttp.AsAsync(fleet, Role.Operator, "desk-1");
        using var browser = await SignInHttp.AsAsync(fleet, Role.Administrator, "admin-1");
        Assert.Contains("name on the form", (await browser.GetAsync("/office/photos")).Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Erase it", (await operatorsBrowser.GetAsync("/office/photos")).Text, StringComparison.Ordinal);
        foreach (var n in (string[])["0", "1"])
            Assert.Equal(HttpStatusCode.Redirect, (await browser.PostAsync("/office/photos", "/office/photos/erase", ("entry", Entry.ToString()), ("n", n))).Status);
        Assert.Contains("Nobody has written or photographed anything yet", (await browser.GetAsync("/office/photos")).Text, StringComparison.Ordinal);
        Assert.Null(await Photos.FindAsync(RunningFleet.Operator, hash, Ct));
        Assert.Equal(["note", "photo 1"], (await fleet.Service<SignInNotes>().NewestAsync(RunningFleet.Operator, 9, Ct))
            .Where(n => n.What == SignInEvent.Erased).Select(n => n.More!.Split(" of ")[0]).Order(StringComparer.Ordinal));
    }

    private Task<HttpResponseMessage> NoteAsync(string text, DockPhone? on = null) =>
        (on ?? phone).Http.PutAsJsonAsync($"/dock/api/entries/{Entry}/note", new { text }, Ct);

    private async Task<HttpResponseMessage> PutAsync(byte[] bytes, string type, int n = 1, DockPhone? on = null, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, $"/dock/api/entries/{Entry}/photos/{n}") { Content = new ByteArrayContent(bytes) };
        request.Content.Headers.ContentType = new MediaTypeHeaderValue(type);
        foreach (var (name, value) in headers) request.Headers.Add(name, value);
        return await (on ?? phone).Http.SendAsync(request, Ct);
    }

    private async Task<string> RefusedAsync(byte[] bytes, string type)
    {
        using var answer = await PutAsync(bytes, type);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        return (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!["detail"]!.GetValue<string>();
    }

    private static async Task<string> HashAsync(HttpResponseMessage answer) => (await answer.Content.ReadFromJsonAsync<JsonObject>(Ct))!["hash"]!.GetValue<string>();

    private static byte[] Picture(int width, int height, SKEncodedImageFormat format)
    {
        using var bitmap = new SKBitmap(width, height);
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.SteelBlue);
            using var paint = new SKPaint { Color = SKColors.OrangeRed, IsAntialias = true };
            canvas.DrawCircle(width / 3f, height / 2f, height / 4f, paint);
        }

        using var data = bitmap.Encode(format, 85);
        return data.ToArray();
    }

    /// <summary>The file with an Exif head that says how the camera was held, and where.</summary>
    private static byte[] WithPlace(byte[] jpeg, ushort orientation)
    {
        byte[] tiff = [.. "II*\0"u8, 8, 0, 0, 0, 1, 0, 0x12, 0x01, 3, 0, 1, 0, 0, 0, (byte)orientation, 0, 0, 0, 0, 0, 0, 0, .. "Skerry Bay GPS"u8];
        byte[] exif = [.. "Exif\0\0"u8, .. tiff];
        var length = new byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(length, (ushort)(exif.Length + 2));
        return [.. jpeg[..2], 0xFF, 0xE1, .. length, .. exif, .. jpeg[2..]];
    }

    /// <summary>A few bytes that say they are a picture of some billions of pixels.</summary>
    private static byte[] HugePng(uint width, uint height)
    {
        var head = new byte[13];
        BinaryPrimitives.WriteUInt32BigEndian(head, width);
        BinaryPrimitives.WriteUInt32BigEndian(head.AsSpan(4), height);
        head[8] = 8;
        var packed = new MemoryStream();
        using (var zip = new ZLibStream(packed, CompressionLevel.SmallestSize, leaveOpen: true)) zip.Write(new byte[60_000]);
        return [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR", head), .. Chunk("IDAT", packed.ToArray()), .. Chunk("IEND", [])];
    }

    private static byte[] Chunk(string name, byte[] data)
    {
        byte[] body = [.. Encoding.ASCII.GetBytes(name), .. data];
        var (length, sum) = (new byte[4], new byte[4]);
        BinaryPrimitives.WriteUInt32BigEndian(length, (uint)data.Length);
        BinaryPrimitives.WriteUInt32BigEndian(sum, Crc(body));
        return [.. length, .. body, .. sum];
    }

    private static uint Crc(byte[] body)
    {
        var crc = uint.MaxValue;
        foreach (var b in body)
        {
            crc ^= b;
            for (var k = 0; k < 8; k++) crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320;
        }

        return ~crc;
    }
}
