using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Devices;
using FleetWake.Store.Operators;
using FleetWake.Store.Records;
using FleetWake.Web.Api;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Dock;

/// <summary>How a phone comes to a dock, and how it gets its next token.</summary>
internal static class EnrolApi
{
    /// <summary>A signature may be this old by the server's clock: long enough for a bad line, too short to be worth keeping.</summary>
    private static readonly TimeSpan SignatureLife = TimeSpan.FromMinutes(10);

    public static void MapEnrol(this IEndpointRouteBuilder dock)
    {
        dock.MapPost("enrol", EnrolAsync);
        dock.MapPost("token", TokenAsync);
    }

    private static async Task<IResult> EnrolAsync(
        HttpContext http, FleetDevices devices, FleetOperators operators, DockPlaces places, Recorder recorder, FailureLimit failures, TimeProvider time)
    {
        if (failures.Refusal(http) is { } refusal) return refusal;
        var (sent, wrong) = await JsonBody.ReadAsync<EnrolRequest>(http);
        if (wrong is not null) return wrong;
        var check = new Check();
        var name = check.Name(sent!.Name, "/name");
        if (string.IsNullOrWhiteSpace(sent.Code)) check.Refuse("/code", "missing", "missing: give the code that the office shows");
        if (sent.PublicKey?.IsGood() != true) check.Refuse("/publicKey", "not_a_key", "give the public half of an EC key of the curve P-256 as a JWK: kty, crv, x and y");
        if (check.Decide(() => new Decision.Keep([], [])) is Decision.Refuse refused) return Problems.Query(refused.Refusals);

        var ct = http.RequestAborted;
        if (await devices.CodeAsync(sent.Code!.Trim(), ct) is not { } code) return Gone(http, failures);

        // What a phone carries of one fleet must never be sent to another. The code stays good for the right phone.
        if (sent.Operator is { Length: > 0 } carried && carried != code.Operator)
            return Problems.Make(StatusCodes.Status409Conflict, "carries-another-fleet", "This phone carries the record of another fleet: export what is unsent there, wipe the phone, and join then. The code still holds.", []);

        // The record first: a phone that no record tells of must not be. It is made once, for its id was made with the code.
        var place = await places.FindAsync(code.Operator, code.Dock, ct);
        var now = time.GetUtcNow();
        var stamp = Stamp.At(code.Entry, code.MadeBy, now, place.Zone);
        await recorder.TakeAsync(code.Operator, RecordKind.Find(EnrolDevice.Kind)!, new EnrolDevice(stamp, code.Device, code.Dock), Arrival.AtOffice(now), ct);
        if (await devices.EnrolAsync(code, name, sent.PublicKey!.Stored(), ct) is not { } issued) return Gone(http, failures);
        var card = (await operators.FindAsync(code.Operator, ct))!;
        return Results.Json(new EnrolAnswer(code.Device, place.Id, place.Name, place.Zone, card.Id, card.Name, issued.Token, issued.Until, issued.RotateAfter));
    }

    private static async Task<IResult> TokenAsync(HttpContext http, FleetDevices devices, FailureLimit failures, TimeProvider time)
    {
        if (failures.Refusal(http) is { } refusal) return refusal;
        var (sent, wrong) = await JsonBody.ReadAsync<TokenRequest>(http);
        if (wrong is not null) return wrong;
        if (sent!.Device is not { Length: > 0 and < 64 } id || await devices.FindAsync(id, http.RequestAborted) is not { } device)
        {
            failures.Failed(http);
            return DeviceHandler.Unknown();
        }

        if (sent.At is not { Length: < 64 } at || !DateTimeOffset.TryParse(at, System.Globalization.CultureInfo.InvariantCulture, System.Globalization.DateTimeStyles.None, out var signedAt))
            return Problems.Field("/at", "not_a_time", "give the phone's clock with its offset, as in 2026-05-03T10:15:00Z");
        if (sent.Signature is not { } signature || !DeviceKey.Signed(device.PublicKey, $"fleetwake-token\n{id}\n{at}", signature))
        {
            failures.Failed(http);
            return Problems.Make(StatusCodes.Status401Unauthorized, "signature-wrong", "This is not signed by the key that the phone enrolled with. Keep the entries, and ask the office for a new code.", []);
        }

        if (device.RevokedAt is not null) return DeviceHandler.Revoked();
        var now = time.GetUtcNow();
        if ((signedAt - now).Duration() > SignatureLife) return WrongClock(now);
        return await devices.RotateAsync(id, signedAt, http.RequestAborted) is { } issued ? Results.Json(new TokenAnswer(issued.Token, issued.Until, issued.RotateAfter)) : WrongClock(now);
    }

    /// <summary>The phone signs again by the time that it is told; that also serves where it signed the same moment twice.</summary>
    private static IResult WrongClock(DateTimeOffset now) => Results.Problem(
        type: Problems.TypeBase + "clock-wrong", title: "clock wrong", statusCode: StatusCodes.Status422UnprocessableEntity,
        detail: "The signed time is not now by the server's clock, or not after the last one: sign again with the time in \"now\".", extensions: new Dictionary<string, object?> { ["now"] = now });

    private static IResult Gone(HttpContext http, FailureLimit failures)
    {
        failures.Failed(http);
        return Problems.Make(StatusCodes.Status410Gone, "code-used-or-expired", "This code was used, or its ten minutes are over: ask the office for a new one.", []);
    }
}

/// <summary>A phone asks to be enrolled.</summary>
/// <param name="Code">The code that the office shows.</param>
/// <param name="Name">Name of the phone for people.</param>
/// <param name="PublicKey">Public half of the key that it made.</param>
/// <param name="Operator">The operator whose entries the phone carries; left out by one that carries none.</param>
internal sealed record EnrolRequest(string? Code, string? Name, DeviceKey? PublicKey, string? Operator = null);

/// <summary>A phone is enrolled.</summary>
/// <param name="Device">Its id, which its records name.</param>
/// <param name="Dock">Id of its dock.</param>
/// <param name="DockName">Name of its dock.</param>
/// <param name="Zone">IANA zone of its dock.</param>
/// <param name="Operator">Id of the operator.</param>
/// <param name="OperatorName">Name of the operator.</param>
/// <param name="Token">Its token: the only time it can be seen.</param>
/// <param name="TokenUntil">When the token ends.</param>
/// <param name="RotateAfter">When to sign for the next one.</param>
internal sealed record EnrolAnswer(string Device, string Dock, string DockName, string Zone, string Operator, string OperatorName, string Token, DateTimeOffset TokenUntil, DateTimeOffset RotateAfter);

/// <summary>A phone asks for its next token.</summary>
/// <param name="Device">Its id.</param>
/// <param name="At">Its clock, with offset.</param>
/// <param name="Signature">ECDSA over "fleetwake-token", a line feed, the device, a line feed and <paramref name="At"/> as sent: r and s, base64url.</param>
internal sealed record TokenRequest(string? Device, string? At, string? Signature);

/// <summary>The next token; the one before is still taken for ten minutes.</summary>
/// <param name="Token">The token.</param>
/// <param name="TokenUntil">When it ends.</param>
/// <param name="RotateAfter">When to sign for the next one.</param>
internal sealed record TokenAnswer(string Token, DateTimeOffset TokenUntil, DateTimeOffset RotateAfter);
