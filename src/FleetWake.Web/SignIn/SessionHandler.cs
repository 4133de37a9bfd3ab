using System.Security.Claims;
using System.Text.Encodings.Web;
using FleetWake.Logbook.Entries;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Options;

namespace FleetWake.Web.SignIn;

/// <summary>Recognises the browser of somebody who signed in. The session is looked up at each request, so that one that was ended is ended at once.</summary>
public sealed class SessionHandler(
    IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder, FleetSessions sessions, SignInNotes notes)
    : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    /// <summary>Name of the scheme.</summary>
    public const string SchemeName = "Session";

    /// <summary>Where one signs in.</summary>
    public const string SignInPath = "/sign-in";

    /// <summary>Name of the cookie. The prefix binds it to this host over TLS; plain HTTP is for this machine alone.</summary>
    public static string CookieOf(HttpRequest request) => request.IsHttps ? "__Host-fleetwake" : "fleetwake";

    /// <summary>The secret that a browser sends; null when it sends none.</summary>
    public static string? SecretOf(HttpRequest request) => request.Cookies[CookieOf(request)] is { Length: > 0 } secret ? secret : null;

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
        if (SecretOf(Request) is not { } secret) return AuthenticateResult.NoResult();
        if (await sessions.RecognizeAsync(secret, Context.RequestAborted) is not { } person) return AuthenticateResult.Fail("unknown or ended session");
        var identity = new ClaimsIdentity(SchemeName);
        identity.AddClaim(new Claim(ClaimTypes.NameIdentifier, person.Id));
        identity.AddClaim(new Claim(Claims.Operator, person.Operator));
        identity.AddClaim(new Claim(Claims.Person, person.Person));
        identity.AddClaim(new Claim(Claims.Name, person.Name));
        identity.AddClaim(new Claim(Claims.Role, Words.Of(person.Role)));
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), SchemeName));
    }

    /// <inheritdoc/>
    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        // What was to be changed is not done by being signed in again: only a page is come back to.
        var to = HttpMethods.IsGet(Request.Method) ? $"?to={UrlEncoder.Default.Encode(Request.PathBase + Request.Path + Request.QueryString)}" : "";
        Response.Redirect(SignInPath + to);
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    protected override async Task HandleForbiddenAsync(AuthenticationProperties properties)
    {
        // What a page offers is what its reader may do, so this is somebody trying, or a role that was just taken.
        if (await sessions.RecognizeAsync(SecretOf(Request) ?? "", Context.RequestAborted) is { } person)
            await notes.AddAsync(person, SignInEvent.Refused, Context.Whence(), Context.RequestAborted, (Context.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText);
        await PageAnswer.Of<NoticePage>(Context, new { Title = PageTexts.English["signin.refused_title"], Text = PageTexts.English["signin.refused"] }, StatusCodes.Status403Forbidden).ExecuteAsync(Context);
    }
}
