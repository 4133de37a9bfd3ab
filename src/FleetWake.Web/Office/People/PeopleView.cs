using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.People;

namespace FleetWake.Web.Office.People;

/// <summary>What the page of people shows.</summary>
/// <param name="People">Everybody, who is here first.</param>
/// <param name="Notes">Who came in and what became of them, newest first; for who lets people in.</param>
/// <param name="Line">What was just done.</param>
/// <param name="Link">A link that was just made, to show once.</param>
/// <param name="Typed">What was typed into the form of invitation.</param>
/// <param name="Refusals">What is wrong with it, or with the last wish about somebody.</param>
public sealed record PeopleView(
    IReadOnlyList<PersonLine> People, IReadOnlyList<SignInNote> Notes, string? Line, MadeLink? Link, TypedInvitation Typed, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>What is wrong with a field; null when nothing is.</summary>
    public string? Wrong(string field) => Refusals.FirstOrDefault(r => r.Field == field)?.Message;
}

/// <summary>Somebody on the page.</summary>
/// <param name="Card">The person.</param>
/// <param name="HasWayIn">Has a passkey or a password.</param>
/// <param name="LinkUntil">Until when an open link works.</param>
/// <param name="Sessions">Browsers signed in.</param>
public sealed record PersonLine(PersonCard Card, bool HasWayIn, DateTimeOffset? LinkUntil, int Sessions);

/// <summary>A link, shown once.</summary>
/// <param name="Name">Whose it is.</param>
/// <param name="Address">The whole address.</param>
public sealed record MadeLink(string Name, string Address);

/// <summary>An invitation as typed.</summary>
public sealed record TypedInvitation(string Person = "", string Name = "", string Address = "", Role Role = Role.Mechanic);
