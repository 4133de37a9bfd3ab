using FleetWake.Logbook.People;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office;

/// <summary>The fleet at a glance.</summary>
internal static class FleetRoutes
{
    public static void MapFleetPage(this IEndpointRouteBuilder office) =>
        office.MapGet("", ShowAsync).NeedsTo(Verb.Read, Matter.Fleet);

    private static async Task<IResult> ShowAsync(HttpContext http, FleetOperators operators) =>
        PageAnswer.Of<FleetPage>(http, new { Scene = await Scene.OfAsync(http, operators) });
}
