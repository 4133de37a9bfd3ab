using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Histories;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>How often the fleet strikes.</summary>
internal static class FleetStrikesApi
{
    public static void MapFleetStrikes(this IEndpointRouteBuilder read) =>
        read.MapGet("fleet/strikes", StrikesAsync).Produces<StrikeRates>()
            .Is("fleet_strikes", $"Strikes per 1,000 engine hours by dock, boat and bottom, with exact limits and drawn towards the fleet. Made on request, for at most {FleetGathering.MostBoats} boats.", "/api/fleet/strikes");

    private static Task<IResult> StrikesAsync(HttpContext http, FleetReading reading) => FleetGathering.AnswerAsync(http, reading, StrikeRates.Of);
}
