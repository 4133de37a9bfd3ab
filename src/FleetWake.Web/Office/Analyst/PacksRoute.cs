using FleetWake.Logbook.People;
using FleetWake.Logbook.Schedules;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Analyst;

/// <summary>The months of which there is a pack.</summary>
internal static class PacksRoute
{
    /// <summary>Two years: a season beside the one before. Older months open by their address.</summary>
    private const int Shown = 24;

    public static void MapPacksPage(this IEndpointRouteBuilder office) =>
        office.MapGet("analyst", async (HttpContext http, FleetOperators operators, OfficeForms forms) =>
        {
            var scene = await Scene.OfAsync(http, operators);
            var today = forms.Today(scene.Operator.Zone);
            var present = new DateOnly(today.Year, today.Month, 1);
            return PageAnswer.Of<PacksPage>(http, new { Scene = scene, Months = (IReadOnlyList<string>)[.. Enumerable.Range(1, Shown).Select(back => Periods.Month(present.AddMonths(-back)))] });
        }).NeedsTo(Verb.Read, Matter.Export);
}
