using FleetWake.Store.People;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.SignIn;

/// <summary>What every way in ends with.</summary>
public sealed class ComingIn(FleetSessions sessions, SignInNotes notes)
{
    /// <summary>Where one goes when nothing else was asked for.</summary>
    public const string Home = "/office";

    /// <summary>Begins a session in this browser, in place of the one it may have had.</summary>
    /// <param name="http">The request.</param>
    /// <param name="person">Who comes in.</param>
    /// <param name="by">By what: passkey, password or link.</param>
    public async Task BeginAsync(HttpContext http, PersonCard person, string by)
    {
        if (SessionHandler.SecretOf(http.Request) is { } earlier) await sessions.EndAsync(earlier, http.RequestAborted);
        SessionHandler.Give(http, await sessions.BeginAsync(person, http.RequestAborted, http.Request.BrowserWords()));
        await notes.AddAsync(person, SignInEvent.SignedIn, http.Whence(), http.RequestAborted, by);
    }

    /// <summary>Where to go: a path of this site, or home. A link to our sign-in must not lead anybody to another site.</summary>
    public static string Path(string? to) =>
        to is ['/', ..] && to is not ['/', '/' or '\\', ..] && !to.Any(c => char.IsControl(c) || c == '\\') && Uri.TryCreate(to, UriKind.Relative, out _) ? to : Home;
}
