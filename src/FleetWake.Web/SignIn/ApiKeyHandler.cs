using System.Security.Claims;
using System.Text.Encodings.Web;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Operators;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace FleetWake.Web.SignIn;

/// <summary>Recognises an API key in <c>Authorization: Bearer</c>. The operator comes from the key, never from the request.</summary>
public sealed class ApiKeyHandler(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, FleetOperators operators)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string SchemeName = "ApiKey";

    private const string Bearer = "Bearer ";

    private ApiKey? expired;

    /// <inheritdoc/>
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        // A route that asks for no key, such as the health probes, must not depend on the database that keys lie in.
        if (Context.GetEndpoint()?.Metadata.GetMetadata<IAuthorizeData>() is null) return AuthenticateResult.NoResult();
        var header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith(Bearer, StringComparison.OrdinalIgnoreCase)) return AuthenticateResult.NoResult();
        var key = await operators.FindKeyAsync(header[Bearer.Length..].Trim(), Context.RequestAborted);
        if (key is null) return AuthenticateResult.Fail("unknown or revoked key");
        if (key.IsExpired(TimeProvider.GetUtcNow()))
        {
            expired = key;
            return AuthenticateResult.Fail("expired key");
        }

        var identity = new ClaimsIdentity(SchemeName);
        identity.AddClaim(new Claim(Claims.Operator, key.Operator));
        foreach (var scope in key.Scopes) identity.AddClaim(new Claim(Claims.Scope, Words.Of(scope)));
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }

    /// <inheritdoc/>
    protected override async Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        await (expired is { UntilAt: { } until } ? Api.Problems.Expired(until) : Api.Problems.Unauthorized()).ExecuteAsync(Context);
    }

    /// <inheritdoc/>
    protected override async Task HandleForbiddenAsync(AuthenticationProperties properties) =>
        await Api.Problems.Forbidden().ExecuteAsync(Context);
}
