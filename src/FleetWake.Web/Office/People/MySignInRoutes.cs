using FleetWake.Logbook.Entries;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Api;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.People;

/// <summary>One's own ways in, and the browsers in which one is signed in.</summary>
internal static class MySignInRoutes
{
    private const string Path = "/office/me/sign-in";

    public static void MapMySignIn(this IEndpointRouteBuilder office)
    {
        var mine = office.MapGroup("/me/sign-in").NeedsSomebody();
        mine.MapGet("", (HttpContext http, MyWays ways) => PageAsync(http, ways, null));
        mine.MapPost("/sessions/{id}", EndAsync);
        mine.MapPost("/others", EndOthersAsync);
        mine.MapPost("/password", PasswordAsync);
        mine.MapPost("/passkey/asked", async (HttpContext http, MyWays ways, Passkeys passkeys) => await ways.IsFreshAsync(http)
            ? await passkeys.AskForNewAsync(http, await ways.MeAsync(http))
            : Problems.Make(StatusCodes.Status403Forbidden, "sign-in-again", PageTexts.English["people.sign_in_again"], []));
        mine.MapPost("/passkey", NewPasskeyAsync);
        mine.MapPost("/passkeys/{id}", PasskeyOffAsync);
    }

    private static async Task<IResult> PageAsync(HttpContext http, MyWays ways, string? wrong)
    {
        var scene = await Scene.OfAsync(http, ways.Operators);
        return PageAnswer.Of<MySignInPage>(
            http, new { Scene = scene, View = await ways.ViewAsync(http, wrong) }, wrong is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> EndAsync(string id, HttpContext http, MyWays ways)
    {
        if (await ways.Sessions.EndOwnAsync(await ways.MeAsync(http), id, http.RequestAborted)) Say(http, "people.session_ended");
        return Results.LocalRedirect(Path);
    }

    private static async Task<IResult> EndOthersAsync(HttpContext http, MyWays ways)
    {
        var me = await ways.MeAsync(http);
        await ways.Sessions.EndAllAsync(me, http.RequestAborted, but: SessionHandler.SecretOf(http.Request));
        await ways.Notes.AddAsync(me, SignInEvent.SessionsEnded, http.Whence(), http.RequestAborted);
        Say(http, "people.others_ended");
        return Results.LocalRedirect(Path);
    }

    /// <summary>Sets the password. Who has one gives it, so that a browser left open cannot be taken over; every other browser is out afterwards.</summary>
    private static async Task<IResult> PasswordAsync(HttpContext http, MyWays ways, Passwords passwords)
    {
        var me = await ways.MeAsync(http);
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        if (!await ways.IsFreshAsync(http)) return await PageAsync(http, ways, PageTexts.English["people.sign_in_again"]);
        var card = (await ways.Operators.FindAsync(me.Operator, http.RequestAborted))!;
        if (await ways.Passkeys.PasswordAsync(me.Id, http.RequestAborted) is not null)
        {
            var (known, wait) = await passwords.CheckAsync(me.Id, form["current"].ToString(), http);
            if (wait is { } waiting) return await PageAsync(http, ways, PageTexts.English.With("signin.wait", ("minutes", Math.Ceiling(waiting.TotalMinutes))));
            if (known?.Id != me.Id) return await PageAsync(http, ways, PageTexts.English["people.current_wrong"]);
        }

        if (Passwords.FaultOf(me, card.Name, form["password"].ToString()) is { } fault) return await PageAsync(http, ways, PageTexts.English["signin.password_" + Words.Of(fault)]);
        await passwords.SetAsync(me, form["password"].ToString(), http);
        await ways.Sessions.EndAllAsync(me, http.RequestAborted, but: SessionHandler.SecretOf(http.Request));
        Say(http, "people.password_set");
        return Results.LocalRedirect(Path);
    }

    private static async Task<IResult> NewPasskeyAsync(HttpContext http, MyWays ways, Passkeys passkeys)
    {
        var me = await ways.MeAsync(http);
        if (!await ways.IsFreshAsync(http)) return Problems.Make(StatusCodes.Status403Forbidden, "sign-in-again", PageTexts.English["people.sign_in_again"], []);
        if (await Answered.ReadAsync(http) is not { } answered || await passkeys.ReadNewAsync(http, me, answered) is not { } passkey)
            return Problems.Make(StatusCodes.Status422UnprocessableEntity, "passkey-refused", PageTexts.English["signin.passkey_refused"], []);
        await passkeys.KeepAsync(me, passkey, http.RequestAborted);
        await ways.Notes.AddAsync(me, SignInEvent.PasskeyMade, http.Whence(), http.RequestAborted, passkey.Name);
        Say(http, "people.passkey_made");
        return Results.Json(new { to = Path });
    }

    private static async Task<IResult> PasskeyOffAsync(string id, HttpContext http, MyWays ways)
    {
        var me = await ways.MeAsync(http);
        if (!await ways.IsFreshAsync(http)) return await PageAsync(http, ways, PageTexts.English["people.sign_in_again"]);
        if (!await ways.Passkeys.TakeOffAsync(me, id, http.RequestAborted)) return await PageAsync(http, ways, PageTexts.English["people.last_way_in"]);
        await ways.Notes.AddAsync(me, SignInEvent.PasskeyTakenOff, http.Whence(), http.RequestAborted);
        Say(http, "people.passkey_off");
        return Results.LocalRedirect(Path);
    }

    private static void Say(HttpContext http, string key) => Handed.Line.Give(http, PageTexts.English[key]);
}
