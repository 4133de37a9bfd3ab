using FleetWake.Logbook.Entries;
using FleetWake.Store.Operators;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Where the fleet is read. Each route declares its parameters and a request that shows it.</summary>
public static class ReadingRoutes
{
    /// <summary>Maps every reading route.</summary>
    public static void MapReading(this IEndpointRouteBuilder routes)
    {
        var read = routes.MapGroup("/api").RequireAuthorization(Words.Of(KeyScope.Read)).WithTags("Fleet")
            .AddEndpointFilter(StrictQuery.CheckAsync)
            .WithMetadata(new ProducesResponseTypeMetadata(304, typeof(void)), new ProducesResponseTypeMetadata(422, typeof(RefusalProblem), [Problems.MediaType]))
            .ProducesProblem(401).ProducesProblem(403).ProducesProblem(503);
        read.MapBoats();
        read.MapBoatHistory();
        read.MapEngines();
        read.MapEngineHistory();
        read.MapProps();
        read.MapPropHistory();
        read.MapMountings();
        read.MapContradictions();
        read.MapDue();
        read.MapClaims();
        read.MapFits();
        read.MapParts();
        read.MapFleet();
        read.MapOffice();
        read.MapFleetLife();
        read.MapFleetCosts();
        read.MapFleetStrikes();
        read.MapFleetCalibration();
        read.MapFleetSpares();
        read.MapMail();
    }

    /// <summary>Declares a list: its pages and its filters.</summary>
    public static RouteHandlerBuilder Lists<T>(this RouteHandlerBuilder route, Paged<T> list, params QueryField[] filters) =>
        route.Takes([.. filters, list.Limit, list.After]).Produces<Page<T>>();

    /// <summary>Declares what one thing is answered with; an unknown one is a 404.</summary>
    public static RouteHandlerBuilder Shows<T>(this RouteHandlerBuilder route) => route.Produces<T>().ProducesProblem(404);

    /// <summary>Declares the parameters of the query.</summary>
    public static RouteHandlerBuilder Takes(this RouteHandlerBuilder route, params QueryField[] fields) => route.WithMetadata([.. fields]);

    /// <summary>Names the route, says what it answers, and shows a request, which the docs print and the tests send.</summary>
    public static RouteHandlerBuilder Is(this RouteHandlerBuilder route, string name, string summary, params string[] requests) =>
        route.WithName(name).WithSummary(summary).WithMetadata([.. requests.Select(r => new ExampleRequest(r))]);

    /// <summary>A thing's answer, or a 404 that names it.</summary>
    public static IResult OrUnknown<T>(T? thing, string what, string id)
        where T : class =>
        thing is null ? Problems.NotFound($"Nothing is on record of {what} \"{id}\", or it is not assessed yet.") : TaggedJson.Of(thing);
}

/// <summary>A request that shows a route, with the ids of <see cref="RecordKind.Example"/>.</summary>
/// <param name="Path">Path and query.</param>
public sealed record ExampleRequest(string Path);
