using FleetWake.Logbook.Fleet;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>What the fleet as a whole has shown of itself.</summary>
internal static class FleetApi
{
    public static void MapFleet(this IEndpointRouteBuilder read) => read.MapGet("fleet/prior", PriorAsync).Takes().Produces<FleetPriorCard>()
        .Is("fleet_prior", "What the fleet has shown of itself by its newest fit: how its props wear, how rough its trials are, how it runs over the year, and how often a drift alarm is false. Number 0 before the first fit: what the trade expects.", "/api/fleet/prior");

    private static async Task<IResult> PriorAsync(HttpContext http, FleetReading reading) =>
        TaggedJson.Of(FleetPriorCard.Of(await reading.FittedPriorAsync(http.User.OperatorOf(), http.RequestAborted)));
}
