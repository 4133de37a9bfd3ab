using FleetWake.Logbook.People;
using FleetWake.Store.People;
using FleetWake.Web.Api;
using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.SignIn;

/// <summary>Signing in, by passkey or by password, and out.</summary>
internal static class SignInPages
{
    private const string SignOutPath = "/sign-out";

    public static void MapSignIn(this IEndpointRouteBuilder routes)
    {
        var pages = routes.MapGroup("").ExcludeFromDescription().OnlyFromOurPages();
        pages.MapGet(SessionHandler.SignInPath, (HttpContext http, string? to) => Page(http, to));
        pages.MapPost(SessionHandler.SignInPath, ByPasswordAsync);
        pages.MapPost(SessionHandler.SignInPath + "/passkey/asked", (HttpContext http, Passkeys passkeys) => passkeys.AskForKnownAsync(http));
        pages.MapPost(SessionHandler.SignInPath + "/passkey", ByPasskeyAsync);
        pages.MapPost(SignOutPath, OutAsync).NeedsSomebody();
    }

    private static IResult Page(HttpContext http, string? to, string? name = null, string? wrong = null) =>
        PageAnswer.Of<SignInPage>(http, new { To = ComingIn.Path(to), Name = name, Wrong = wrong }, wrong is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> ByPasswordAsync(HttpContext http, Passwords passwords, ComingIn coming)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var (name, password, to) = (form["name"].ToString(), form["password"].ToString(), form["to"].ToString());
        if (name.Trim().Length == 0 || password.Length == 0) return Page(http, to, name, PageTexts.English["signin.both"]);
        var (person, wait) = await passwords.CheckAsync(name, password, http);
        if (person is null)
            return Page(http, to, name, wait is { } waiting ? PageTexts.English.With("signin.wait", ("minutes", Math.Ceiling(waiting.TotalMinutes))) : PageTexts.English["signin.wrong"]);
        await coming.BeginAsync(http, person, "password");
        return Results.LocalRedirect(ComingIn.Path(to));
    }

    private static async Task<IResult> ByPasskeyAsync(HttpContext http, Passkeys passkeys, ComingIn coming)
    {
        if (await Answered.ReadAsync(http) is not { } answered || await passkeys.RecognizeAsync(http, answered) is not { } person)
            return Problems.Make(StatusCodes.Status422UnprocessableEntity, "passkey-refused", PageTexts.English["signin.passkey_unknown"], []);
        await coming.BeginAsync(http, person, "passkey");
        return Results.Json(new { to = ComingIn.Path(answered.To) });
    }

    // Whoever's session just ended by itself is out already, and comes to the same page.
    private static async Task<IResult> OutAsync(HttpContext http, FleetPeople people, FleetSessions sessions, SignInNotes notes)
    {
        await sessions.EndAsync(SessionHandler.SecretOf(http.Request)!, http.RequestAborted);
        if (await people.FindAsync(http.User.OperatorOf(), http.User.PersonOf()!, http.RequestAborted) is { } person)
            await notes.AddAsync(person, SignInEvent.SignedOut, http.Whence(), http.RequestAborted);
        SessionHandler.Take(http);
        return Results.LocalRedirect(SessionHandler.SignInPath);
    }
}
