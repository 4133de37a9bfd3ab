using System.Security.Claims;
using System.Text.Encodings.Web;
using FleetWake.Store.Devices;
using FleetWake.Web.Api;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace FleetWake.Web.Dock;

/// <summary>
/// Recognises a dock's phone by its token. It is looked up at each request, so that one that was revoked is so at once. A
/// revoked phone is recognised, too: what it still brings is kept back rather than lost, and every other route refuses it.
/// </summary>
internal sealed class DeviceHandler(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, FleetDevices devices, TimeProvider time)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string SchemeName = "Device";

    private const string Bearer = "Bearer ";

    private bool expired;

    /// <summary>For phones that may record; with <paramref name="orRevoked"/>, for those that were revoked as well.</summary>
    public static void Policy(AuthorizationPolicyBuilder policy, bool orRevoked = false) =>
        policy.AddAuthenticationSchemes(SchemeName).RequireClaim(DockClaims.Device).RequireAssertion(who => orRevoked || !who.User.IsRevoked());

    /// <inheritdoc/>
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        var header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase)) return AuthenticateResult.NoResult();
        var token = header[Bearer.Length..].Trim();
        if (DeviceToken.IdOf(token) is not { } id || await devices.FindAsync(id, Context.RequestAborted) is not { } device) return AuthenticateResult.Fail("unknown device");
        var standing = device.Judge(token, time.GetUtcNow());
        expired = standing == TokenStanding.Expired;
        if (standing is TokenStanding.Expired or TokenStanding.NotKnown) return AuthenticateResult.Fail("token expired");
        await devices.SeenAsync(device, Context.RequestAborted);

        var identity = new ClaimsIdentity(SchemeName);
        identity.AddClaim(new Claim(Claims.Operator, device.Operator));
        identity.AddClaim(new Claim(DockClaims.Device, device.Id));
        identity.AddClaim(new Claim(DockClaims.Dock, device.Dock));
        if (device.RevokedAt is { } revoked) identity.AddClaim(new Claim(DockClaims.Revoked, revoked.ToString("o")));
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }

    /// <inheritdoc/>
    protected override async Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        await (expired ? Expired() : Unknown()).ExecuteAsync(Context);
    }

    /// <inheritdoc/>
    protected override async Task HandleForbiddenAsync(AuthenticationProperties properties) => await Revoked().ExecuteAsync(Context);

    /// <summary>The device's key opens it again.</summary>
    public static IResult Expired() => Problems.Make(
        StatusCodes.Status401Unauthorized, "token-expired", "The token's time is over, or a newer one took its place: sign for the next one at /dock/api/token. Nothing entered is lost.", []);

    /// <summary>No device of that id, or no token at all.</summary>
    public static IResult Unknown() => Problems.Make(
        StatusCodes.Status401Unauthorized, "device-unknown", "This phone is not enrolled here. Keep the entries, and ask the office for a new code.", []);

    /// <summary>The office ended it.</summary>
    public static IResult Revoked() => Problems.Make(
        StatusCodes.Status401Unauthorized, "device-revoked", "The office has revoked this phone. Entries sent now are kept back for a person to decide; nothing else is taken or shown.", []);
}
