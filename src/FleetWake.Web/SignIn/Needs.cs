using FleetWake.Logbook.People;
using Microsoft.AspNetCore.Builder;

namespace FleetWake.Web.SignIn;

/// <summary>What a route for people asks of who is signed in; tests walk these over every role.</summary>
/// <param name="Verb">What is done.</param>
/// <param name="Matter">With what.</param>
public sealed record Need(Verb Verb, Matter Matter);

/// <summary>Declares it. Whatever asks for somebody also asks that changes come from our own pages (<see cref="FormGuard"/>).</summary>
public static class Needs
{
    /// <summary>Only for people whose role may do this by <see cref="Permissions"/>.</summary>
    public static TBuilder NeedsTo<TBuilder>(this TBuilder route, Verb verb, Matter matter)
        where TBuilder : IEndpointConventionBuilder =>
        route.RequireAuthorization(p => p.AddAuthenticationSchemes(SessionHandler.SchemeName).RequireAssertion(who => who.User.May(verb, matter)))
            .WithMetadata(new Need(verb, matter))
            .OnlyFromOurPages();

    /// <summary>For anybody who is signed in.</summary>
    public static TBuilder NeedsSomebody<TBuilder>(this TBuilder route)
        where TBuilder : IEndpointConventionBuilder =>
        route.RequireAuthorization(p => p.AddAuthenticationSchemes(SessionHandler.SchemeName).RequireClaim(Claims.Person)).OnlyFromOurPages();
}
