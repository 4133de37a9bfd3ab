using System.Globalization;
using FleetWake.Store.Attribution;
using FleetWake.Web.Api;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Dock;

/// <summary>Who it is that holds a shared phone: a name and six digits. That says who told an entry, and opens nothing.</summary>
internal static class SignApi
{
    /// <summary>A PIN is asked for again after this long: a day at the dock.</summary>
    public static readonly TimeSpan SignedFor = TimeSpan.FromHours(12);

    private const int MostConfirms = 1000;

    public static void MapSign(this IEndpointRouteBuilder dock)
    {
        dock.MapPost("sign", SignAsync);
        dock.MapPost("pin", SetAsync);
    }

    private static async Task<IResult> SignAsync(HttpContext http, DockPeople people, DockPins pins, DockSignatures signatures, TimeProvider time)
    {
        var (sent, wrong) = await JsonBody.ReadAsync<SignRequest>(http);
        if (wrong is not null) return wrong;
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        if (sent!.Confirms is { Count: > MostConfirms }) return Problems.Field("/confirms", "too_many", $"confirm at most {MostConfirms} entries at once");
        if (await StrangerAsync(people, tenant, sent.Person, ct) is { } stranger) return stranger;
        var answer = await pins.CheckAsync(tenant, sent.Person!, sent.Pin ?? "", ct);
        if (answer.Outcome != PinOutcome.Right) return Refused(http, answer, time.GetUtcNow());
        if (sent.Confirms is { Count: > 0 } confirms) await signatures.ConfirmAsync(tenant, http.User.DeviceOf(), sent.Person!, confirms, ct);
        return Results.Json(new SignAnswer(sent.Person!, time.GetUtcNow() + SignedFor));
    }

    private static async Task<IResult> SetAsync(HttpContext http, DockPeople people, DockPins pins, TimeProvider time)
    {
        var (sent, wrong) = await JsonBody.ReadAsync<PinRequest>(http);
        if (wrong is not null) return wrong;
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        if (await StrangerAsync(people, tenant, sent!.Person, ct) is { } stranger) return stranger;
        if (Weakness(sent.NewPin ?? "") is { } weak) return Problems.Field("/newPin", "not_a_pin", weak);
        var answer = await pins.SetAsync(tenant, sent.Person!, sent.Pin ?? "", sent.NewPin!, ct);
        return answer.Outcome == PinOutcome.Right ? Results.Json(new SignAnswer(sent.Person!, time.GetUtcNow() + SignedFor)) : Refused(http, answer, time.GetUtcNow());
    }

    /// <summary>Why a PIN will not do; null when it will. Runs and repeats are what a stranger tries first.</summary>
    private static string? Weakness(string pin)
    {
        if (pin.Length != DockPins.Digits || pin.Any(c => !char.IsAsciiDigit(c))) return $"a PIN is {DockPins.Digits} digits";
        var step = pin[1] - pin[0];
        return step is >= -1 and <= 1 && pin.Zip(pin[1..]).All(p => p.Second - p.First == step) ? "this PIN is the first that anybody would try: give one that is no run and no repeat" : null;
    }

    private static async Task<IResult?> StrangerAsync(DockPeople people, string tenant, string? person, CancellationToken ct) =>
        (await people.OfAsync(tenant, ct)).Any(p => p.Person == person)
            ? null
            : Problems.Make(StatusCodes.Status403Forbidden, "person-unknown", "Nobody of that id signs at this operator's docks: ask the office.", []);

    private static IResult Refused(HttpContext http, PinAnswer answer, DateTimeOffset now)
    {
        var minutes = answer.LockedUntil is { } until ? Math.Max(1, (int)Math.Ceiling((until - now).TotalMinutes)) : 0;
        if (answer.LockedUntil is { } at) http.Response.Headers.RetryAfter = Math.Max(1, Math.Ceiling((at - now).TotalSeconds)).ToString(CultureInfo.InvariantCulture);
        var (type, detail) = answer.Outcome switch
        {
            PinOutcome.Locked => ("pin-locked", $"Too many wrong tries: wait {minutes} min, or ask the office for a start code. Entries can be made meanwhile; they say that the name is claimed."),
            PinOutcome.NotSet => ("pin-not-set", "This person has set no PIN yet: ask the office for a start code."),
            _ => ("pin-wrong", $"That is not the PIN. {(answer.TriesLeft == 1 ? "One try is" : $"{answer.TriesLeft} tries are")} left."),
        };
        return Results.Problem(
            type: Problems.TypeBase + type, title: type.Replace('-', ' '), statusCode: StatusCodes.Status403Forbidden, detail: detail,
            extensions: new Dictionary<string, object?> { ["triesLeft"] = answer.TriesLeft, ["lockedUntil"] = answer.LockedUntil });
    }
}

/// <summary>Somebody signs.</summary>
/// <param name="Person">Id of the person.</param>
/// <param name="Pin">The PIN.</param>
/// <param name="Confirms">Entries of this phone that the person says are theirs.</param>
internal sealed record SignRequest(string? Person, string? Pin, IReadOnlyList<Guid>? Confirms = null);

/// <summary>Somebody sets a PIN.</summary>
/// <param name="Person">Id of the person.</param>
/// <param name="Pin">The present PIN, or a start code of the office.</param>
/// <param name="NewPin">The new one.</param>
internal sealed record PinRequest(string? Person, string? Pin, string? NewPin);

/// <summary>Somebody signed.</summary>
/// <param name="Person">Id of the person.</param>
/// <param name="Until">When the phone asks for the PIN again.</param>
internal sealed record SignAnswer(string Person, DateTimeOffset Until);
