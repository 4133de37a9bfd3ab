using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Histories;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>How long the fleet's props last.</summary>
internal static class FleetLifeApi
{
    public static void MapFleetLife(this IEndpointRouteBuilder read) =>
        read.MapGet("fleet/life", LifeAsync).Produces<FleetLife>()
            .Is("fleet_life", $"How long props last in engine hours, by material and by water: until they are used up, and until they are worn. Made on request, for at most {FleetGathering.MostBoats} boats.", "/api/fleet/life");

    private static Task<IResult> LifeAsync(HttpContext http, FleetReading reading) =>
        FleetGathering.AnswerAsync(http, reading, fleet => new FleetLife(PropLives.Of(fleet), PropLives.Of(fleet, LifeQuestion.Worn)));
}

/// <summary>How long the fleet's props last, for two questions.</summary>
/// <param name="UsedUp">Until another is needed: worn, corroded and struck past repair all end a life.</param>
/// <param name="Worn">Until they are worn or corroded: a prop that was struck past repair was still going.</param>
public sealed record FleetLife(PropLives UsedUp, PropLives Worn);
