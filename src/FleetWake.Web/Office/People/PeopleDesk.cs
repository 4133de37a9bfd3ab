using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.People;

/// <summary>Gathers what the page of people shows.</summary>
internal sealed class PeopleDesk(FleetOperators operators, FleetPeople people, FleetInvitations invitations, FleetSessions sessions, FleetPasskeys ways, SignInNotes notes, SiteAddress site)
{
    private const int NotesShown = 40;
    private static readonly Handed Link = new("fleetwake-link", TimeSpan.FromMinutes(2));

    public FleetOperators Operators => operators;

    public FleetPeople People => people;

    public async Task<PeopleView> ViewAsync(HttpContext http, OperatorCard card, TypedInvitation typed, IReadOnlyList<Refusal> refusals)
    {
        var ct = http.RequestAborted;
        var open = await invitations.OpenAsync(card.Id, ct);
        var able = await ways.WithAWayInAsync(card.Id, ct);
        var signedIn = await sessions.CountsAsync(card.Id, ct);
        var all = (await people.AllAsync(card.Id, ct))
            .Select(p => new PersonLine(p, able.Contains(p.Id), open.TryGetValue(p.Id, out var until) ? until : null, signedIn.GetValueOrDefault(p.Id)))
            .OrderBy(p => p.Card.LeftAt is not null).ThenBy(p => p.Card.Name, StringComparer.OrdinalIgnoreCase).ToList();
        var shown = http.User.May(Verb.Decide, Matter.People) ? await notes.NewestAsync(card.Id, NotesShown, ct) : [];
        var made = Link.Take(http)?.Split('\n') is [var name, var path] ? new MadeLink(name, site.Of(http.Request) + path) : null;
        return new PeopleView(all, shown, Handed.Line.Take(http), made, typed, refusals);
    }

    /// <summary>Shows a link on the page that follows, once.</summary>
    public static void ShowOnce(HttpContext http, PersonCard person, string secret) => Link.Give(http, $"{person.Name}\n{FleetInvitations.PathOf(secret)}");
}
