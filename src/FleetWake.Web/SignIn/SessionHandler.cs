using System.Security.Claims;
using System.Text.Encodings.Web;
using FleetWake.Logbook.Entries;
using FleetWake.Store.People;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace FleetWake.Web.SignIn;

/// <summary>Recognises the browser of somebody who signed in. The session is looked up at each request, so that one that was ended is ended at once.</summary>
public sealed class SessionHandler(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, FleetSessions sessions)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string SchemeName = "Session";

    /// <summary>Where one signs in.</summary>
    public const string SignInPath = "/sign-in";

    /// <summary>Name of the cookie. The prefix binds it to this host over TLS; plain HTTP is for this machine alone.</summary>
    public static string CookieOf(HttpRequest request) => request.IsHttps ? "__Host-fleetwake" : "fleetwake";

    /// <summary>Gives a browser the secret of its session.</summary>
    public static void Give(HttpContext http, string secret) => http.Response.Cookies.Append(CookieOf(http.Request), secret, new CookieOptions
    {
        HttpOnly = true,
        Secure = http.Request.IsHttps,
        SameSite = SameSiteMode.Lax,
        IsEssential = true,
        Path = "/",
        MaxAge = FleetSessions.Longest,
    });

    /// <summary>Takes it back.</summary>
    public static void Take(HttpContext http) => http.Response.Cookies.Delete(CookieOf(http.Request), new CookieOptions { Path = "/", Secure = http.Request.IsHttps, HttpOnly = true });

    /// <inheritdoc/>
    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (Request.Cookies[CookieOf(Request)] is not { Length: > 0 } secret) return AuthenticateResult.NoResult();
        if (await sessions.RecognizeAsync(secret, Context.RequestAborted) is not { } person) return AuthenticateResult.Fail("unknown or ended session");
        var identity = new ClaimsIdentity(SchemeName);
        identity.AddClaim(new Claim(Claims.Operator, person.Operator));
        identity.AddClaim(new Claim(Claims.Person, person.Person));
        identity.AddClaim(new Claim(Claims.Name, person.Name));
        identity.AddClaim(new Claim(Claims.Role, Words.Of(person.Role)));
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }

    /// <inheritdoc/>
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Redirect($"{SignInPath}?to={UrlEncoder.Default.Encode(Request.PathBase + Request.Path + Request.QueryString)}");
        return Task.CompletedTask;
    }
}
