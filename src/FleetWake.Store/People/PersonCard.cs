using FleetWake.Logbook.People;

namespace FleetWake.Store.People;

/// <summary>Somebody who keeps the record: an erasable row, for name and address are personal; facts name the id only.</summary>
/// <param name="Id"><see cref="KeyOf"/> of operator and person: a person is looked up before the operator is known.</param>
/// <param name="Operator">The operator; the tenant comes from here and never from a request.</param>
/// <param name="Person">Pseudonymous id within the operator, as it stands in records, e.g. <c>mech-1</c>.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Address">Mail address, lower case; null for somebody who only signs at a dock's phone.</param>
/// <param name="Role">What the person does.</param>
/// <param name="LeftAt">When the person left; nobody signs in afterwards.</param>
public sealed record PersonCard(string Id, string Operator, string Person, string Name, string? Address, Role Role, DateTimeOffset? LeftAt = null)
{
    /// <summary>The key of a person of an operator.</summary>
    public static string KeyOf(string @operator, string person) => $"{@operator}/{person}";
}

/// <summary>A browser in which somebody signed in. Ended here, it is ended within a minute everywhere.</summary>
/// <param name="Id">SHA-256 of the secret in the cookie, lower-case hex.</param>
/// <param name="PersonKey">Key of the person.</param>
/// <param name="BegunAt">When.</param>
/// <param name="UntilAt">When it ends by itself.</param>
/// <param name="EndedAt">When it was ended.</param>
public sealed record PersonSession(string Id, string PersonKey, DateTimeOffset BegunAt, DateTimeOffset UntilAt, DateTimeOffset? EndedAt = null);
