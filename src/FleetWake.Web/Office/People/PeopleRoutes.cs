using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.People;

/// <summary>Who keeps the record: asking people in, roles, ending access.</summary>
internal static class PeopleRoutes
{
    private const string Path = "/office/people";

    public static void MapPeoplePages(this IEndpointRouteBuilder office)
    {
        office.MapGet("/people", (HttpContext http, PeopleDesk desk) => PageAsync(http, desk, new TypedInvitation(), [])).NeedsTo(Verb.Read, Matter.People);
        var decide = office.MapGroup("/people").NeedsTo(Verb.Decide, Matter.People);
        decide.MapPost("", InviteAsync);
        decide.MapPost("/{person}/link", LinkAsync);
        decide.MapPost("/{person}/role", RoleAsync);
        decide.MapPost("/{person}/sessions", EndSessionsAsync);
        decide.MapPost("/{person}/leave", LeaveAsync);
    }

    private static async Task<IResult> PageAsync(HttpContext http, PeopleDesk desk, TypedInvitation typed, IReadOnlyList<Refusal> refusals)
    {
        var scene = await Scene.OfAsync(http, desk.Operators);
        var view = await desk.ViewAsync(http, scene.Operator, typed, refusals);
        return PageAnswer.Of<PeoplePage>(http, new { Scene = scene, View = view, May = http.User.May(Verb.Decide, Matter.People) }, refusals.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static async Task<IResult> InviteAsync(HttpContext http, PeopleDesk desk, FleetInvitations invitations)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        Words.TryRead<Role>(form["role"].ToString(), out var role);
        var typed = new TypedInvitation(form["person"].ToString().Trim(), form["name"].ToString(), form["address"].ToString(), role);
        var card = (await desk.Operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!;
        var answer = await desk.People.InviteAsync(card, typed.Person.Length > 0 ? typed.Person : null, typed.Name, typed.Address, role, http.HandOf(), http.RequestAborted);
        if (answer.Person is null) return await PageAsync(http, desk, typed, answer.Refusals);
        PeopleDesk.ShowOnce(http, answer.Person, await invitations.MakeAsync(answer.Person, signsIn: false, http.RequestAborted));
        return Results.LocalRedirect(Path);
    }

    private static Task<IResult> LinkAsync(
        string person, HttpContext http, PeopleDesk desk, FleetInvitations invitations, FleetPasskeys ways, SignInNotes notes) => OfAsync(person, http, desk, async found =>
    {
        // A browser left open must not make its finder a way in of his own.
        if (person == http.User.PersonOf()) return [new Refusal("", "own_link", PageTexts.English["people.own_link"])];
        if ((await http.Request.ReadFormAsync(http.RequestAborted))["lost"] == "on")
        {
            await ways.TakeAllOffAsync(found, http.RequestAborted);
            await notes.AddAsync(found, SignInEvent.PasskeyTakenOff, http.Whence(), http.RequestAborted, "all", http.User.PersonOf());
        }

        PeopleDesk.ShowOnce(http, found, await invitations.MakeAsync(found, signsIn: false, http.RequestAborted));
        await notes.AddAsync(found, SignInEvent.Invited, http.Whence(), http.RequestAborted, "link", http.User.PersonOf());
        return [];
    });

    private static Task<IResult> RoleAsync(string person, HttpContext http, PeopleDesk desk) => OfAsync(person, http, desk, async found =>
    {
        if (!Words.TryRead<Role>((await http.Request.ReadFormAsync(http.RequestAborted))["role"].ToString(), out var role))
            return [new Refusal("/role", "unknown_word", PageTexts.English["people.no_role"])];
        var card = (await desk.Operators.FindAsync(found.Operator, http.RequestAborted))!;
        var answer = await desk.People.GiveRoleAsync(card, person, role, http.HandOf(), http.RequestAborted);
        if (answer.Person is not null) Say(http, "people.role_given", ("name", found.Name), ("role", Words.Prose(role)));
        return answer.Refusals;
    });

    private static Task<IResult> EndSessionsAsync(string person, HttpContext http, PeopleDesk desk, FleetSessions sessions, SignInNotes notes) => OfAsync(person, http, desk, async found =>
    {
        var ended = await sessions.EndAllAsync(found, http.RequestAborted);
        await notes.AddAsync(found, SignInEvent.SessionsEnded, http.Whence(), http.RequestAborted, null, http.User.PersonOf());
        Say(http, "people.sessions_ended", ("name", found.Name), ("count", ended));
        return [];
    });

    private static Task<IResult> LeaveAsync(string person, HttpContext http, PeopleDesk desk) => OfAsync(person, http, desk, async found =>
    {
        var forget = (await http.Request.ReadFormAsync(http.RequestAborted))["forget"] == "on";
        var card = (await desk.Operators.FindAsync(found.Operator, http.RequestAborted))!;
        var answer = await desk.People.LeaveAsync(card, person, forget, http.HandOf(), http.RequestAborted);
        if (answer.Person is not null) Say(http, forget ? "people.left_forgotten" : "people.left_now", ("name", found.Name));
        return answer.Refusals;
    });

    /// <summary>Something about one person of this operator.</summary>
    private static async Task<IResult> OfAsync(string person, HttpContext http, PeopleDesk desk, Func<PersonCard, Task<IReadOnlyList<Refusal>>> wish)
    {
        var found = await desk.People.FindAsync(http.User.OperatorOf(), person, http.RequestAborted);
        IReadOnlyList<Refusal> refusals = found is { LeftAt: null } ? await wish(found) : [new Refusal("/person", "unknown", PageTexts.English["people.nobody"])];
        return refusals.Count > 0 ? await PageAsync(http, desk, new TypedInvitation(), [.. refusals.Select(r => r with { Field = "" })]) : Results.LocalRedirect(Path);
    }

    private static void Say(HttpContext http, string key, params (string Name, object? Value)[] places) =>
        Handed.Line.Give(http, PageTexts.English.With(key, places));
}
