using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Props;

/// <summary>The fleet's props: where each is, and what it is.</summary>
internal static class PropsRoutes
{
    public static void MapPropsPage(this IEndpointRouteBuilder office) =>
        office.MapGet("props", ShowAsync).NeedsTo(Verb.Read, Matter.Stock);

    private static async Task<IResult> ShowAsync(HttpContext http, FleetOperators operators, FleetReading reading, PropsReading props)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var filter = PropsFilter.Of(http.Request);
        var list = await props.OfAsync(tenant, filter, ct);
        return PageAnswer.Of<PropsPage>(http, new
        {
            Scene = await Scene.OfAsync(http, operators),
            List = list,
            Filter = filter,
            Office = await reading.OfficeAsync(tenant, ct),
            Names = await BoatNames.OfAsync(reading, tenant, list.Shown.Select(l => l.Place.Boat).OfType<string>(), ct),
        });
    }
}
