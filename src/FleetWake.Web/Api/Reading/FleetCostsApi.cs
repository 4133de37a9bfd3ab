using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Store.Histories;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>What the fleet's props cost.</summary>
internal static class FleetCostsApi
{
    public static void MapFleetCosts(this IEndpointRouteBuilder read) =>
        read.MapGet("fleet/costs", CostsAsync).Produces<WearCost>()
            .Is("fleet_costs", $"What 100 engine hours of a prop cost by material, strike damage included, and what has no price. Made on request, for at most {FleetGathering.MostBoats} boats.", "/api/fleet/costs");

    private static Task<IResult> CostsAsync(HttpContext http, FleetReading reading) => FleetGathering.AnswerAsync(http, reading, WearCost.Of);
}
