using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Shop;

/// <summary>What is away at shops and when it is due back. What is recorded of a prop is recorded on its own page.</summary>
internal static class ShopRoutes
{
    public static void MapShopPage(this IEndpointRouteBuilder office) =>
        office.MapGet("shop", ShowAsync).NeedsTo(Verb.Read, Matter.Stock);

    private static async Task<IResult> ShowAsync(HttpContext http, FleetOperators operators, FleetReading reading, OfficeForms forms)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var scene = await Scene.OfAsync(http, operators);
        var view = await ShopView.OfAsync(reading, tenant, ct);
        return PageAnswer.Of<ShopPage>(http, new
        {
            Scene = scene,
            View = view,
            Office = await reading.OfficeAsync(tenant, ct),
            Names = await BoatNames.OfAsync(reading, tenant, view.Loaners.Select(l => l.Place.Boat).OfType<string>(), ct),
            Today = forms.Today(scene.Operator.Zone),
        });
    }
}
