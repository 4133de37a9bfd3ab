using FleetWake.Logbook.Entries;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Api;
using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.SignIn;

/// <summary>Where a link leads: choose a passkey or a password, and be in. Looking at it uses nothing up, for scanners follow links.</summary>
internal static class InvitationPages
{
    public static void MapInvitations(this IEndpointRouteBuilder routes)
    {
        var pages = routes.MapGroup("/invitation/{secret}").ExcludeFromDescription().OnlyFromOurPages().AddEndpointFilter(FindAsync);
        pages.MapGet("", ShowAsync);
        pages.MapPost("", ByPasswordAsync);
        pages.MapPost("/at-once", AtOnceAsync);
        pages.MapPost("/passkey/asked", (HttpContext http, Passkeys passkeys) => passkeys.AskForNewAsync(http, Found(http).Person));
        pages.MapPost("/passkey", ByPasskeyAsync);
    }

    private static async ValueTask<object?> FindAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var http = context.HttpContext;
        var invitations = (FleetInvitations)http.RequestServices.GetService(typeof(FleetInvitations))!;
        var found = await invitations.FindAsync((string)http.GetRouteValue("secret")!, http.RequestAborted);
        if (found is null) return Gone(http);
        http.Items[typeof(Invitation)] = found.Value;
        return await next(context);
    }

    private static (Invitation Invitation, PersonCard Person) Found(HttpContext http) => ((Invitation, PersonCard))http.Items[typeof(Invitation)]!;

    private static IResult Gone(HttpContext http) => PageAnswer.Of<NoticePage>(
        http, new { Title = PageTexts.English["signin.link_gone_title"], Text = PageTexts.English["signin.link_gone"], To = SessionHandler.SignInPath, Link = "signin.title" }, StatusCodes.Status404NotFound);

    private static async Task<IResult> ShowAsync(string secret, HttpContext http, FleetOperators operators) => await PageAsync(secret, http, operators, null);

    private static async Task<IResult> PageAsync(string secret, HttpContext http, FleetOperators operators, string? wrong)
    {
        var (invitation, person) = Found(http);
        var card = await operators.FindAsync(person.Operator, http.RequestAborted);
        return PageAnswer.Of<InvitationPage>(
            http, new { Path = FleetInvitations.PathOf(secret), Person = person, Fleet = card!.Name, invitation.SignsIn, Wrong = wrong },
            wrong is null ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> ByPasswordAsync(
        string secret, HttpContext http, FleetOperators operators, FleetInvitations invitations, Passwords passwords, FleetSessions sessions, ComingIn coming)
    {
        var (invitation, person) = Found(http);
        var card = await operators.FindAsync(person.Operator, http.RequestAborted);
        var password = (await http.Request.ReadFormAsync(http.RequestAborted))["password"].ToString();
        if (Passwords.FaultOf(person, card!.Name, password) is { } fault)
            return await PageAsync(secret, http, operators, PageTexts.English["signin.password_" + Words.Of(fault)]);
        if (!await invitations.UseAsync(invitation, http.RequestAborted)) return Gone(http);
        await passwords.SetAsync(person, password, http);
        await sessions.EndAllAsync(person, CancellationToken.None);
        await coming.BeginAsync(http, person, "link");
        return Results.LocalRedirect(ComingIn.Home);
    }

    private static async Task<IResult> ByPasskeyAsync(HttpContext http, FleetInvitations invitations, Passkeys passkeys, SignInNotes notes, ComingIn coming)
    {
        var (invitation, person) = Found(http);
        if (await Answered.ReadAsync(http) is not { } answered || await passkeys.ReadNewAsync(http, person, answered) is not { } passkey)
            return Problems.Make(StatusCodes.Status422UnprocessableEntity, "passkey-refused", PageTexts.English["signin.passkey_refused"], []);
        if (!await invitations.UseAsync(invitation, http.RequestAborted))
            return Problems.Make(StatusCodes.Status410Gone, "link-used", PageTexts.English["signin.link_gone"], []);
        // Not given up with the connection: the link is used up by now.
        await passkeys.KeepAsync(person, passkey, CancellationToken.None);
        await notes.AddAsync(person, SignInEvent.PasskeyMade, http.Whence(), CancellationToken.None, passkey.Name);
        await coming.BeginAsync(http, person, "link");
        return Results.Json(new { to = ComingIn.Home });
    }

    private static async Task<IResult> AtOnceAsync(HttpContext http, FleetInvitations invitations, ComingIn coming)
    {
        var (invitation, person) = Found(http);
        if (!invitation.SignsIn || !await invitations.UseAsync(invitation, http.RequestAborted)) return Gone(http);
        await coming.BeginAsync(http, person, "link");
        return Results.LocalRedirect(ComingIn.Home);
    }
}
