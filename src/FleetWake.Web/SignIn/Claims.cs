using System.Security.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;

namespace FleetWake.Web.SignIn;

/// <summary>What is known of a caller.</summary>
public static class Claims
{
    /// <summary>Claim type of the operator.</summary>
    public const string Operator = "operator";

    /// <summary>Claim type of a scope.</summary>
    public const string Scope = "scope";

    /// <summary>Claim type of the person within the operator.</summary>
    public const string Person = "person";

    /// <summary>Claim type of the person's name.</summary>
    public const string Name = "name";

    /// <summary>Claim type of the person's role.</summary>
    public const string Role = "role";

    /// <summary>The person who is signed in; null for a program or a device.</summary>
    public static string? PersonOf(this ClaimsPrincipal user) => user.FindFirstValue(Person);

    /// <summary>The role of the person who is signed in; null for a program or a device.</summary>
    public static Role? RoleOf(this ClaimsPrincipal user) => user.FindFirstValue(Role) is { } word && Words.TryRead<Role>(word, out var role) ? role : null;

    /// <summary>Whether the person who is signed in may do something: what a page offers and what its endpoint takes are asked of one table.</summary>
    public static bool May(this ClaimsPrincipal user, Verb verb, Matter matter) => user.RoleOf() is { } role && Permissions.Allow(role, verb, matter);

    /// <summary>The caller's operator.</summary>
    public static string OperatorOf(this ClaimsPrincipal user) =>
        user.FindFirstValue(Operator) ?? throw new InvalidOperationException("The route does not ask for a key.");
}
