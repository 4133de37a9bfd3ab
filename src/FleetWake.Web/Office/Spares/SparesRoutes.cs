using FleetWake.Logbook.Parts;
using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Spares;

/// <summary>Spares and small parts: what lies where, what should, and what to order.</summary>
internal static class SparesRoutes
{
    public static void MapSparesPage(this IEndpointRouteBuilder office)
    {
        office.MapGet("spares", (HttpContext http, Shown shown) => shown.PageAsync(http, FormState.Asked(http.Request))).NeedsTo(Verb.Read, Matter.Stock);
        office.MapPost("spares/counted", (IFormCollection form, HttpContext http, Shown shown) =>
            shown.TakeAsync(http, "counted", form, (f, stamp) => new CountPart(stamp, f.Text("part"), f.Text("dock"), f.Whole("quantity")))).NeedsTo(Verb.Record, Matter.Stock);
        office.MapPost("spares/stocked", (IFormCollection form, HttpContext http, Shown shown) =>
            shown.TakeAsync(http, "stocked", form, (f, stamp) => new StockPart(stamp, f.Text("part"), f.Text("partKind"), f.Text("dock"), f.Whole("quantity"), f.Text("name")))).NeedsTo(Verb.Record, Matter.Stock);
    }

    /// <summary>Shows the page.</summary>
    internal sealed class Shown(FleetOperators operators, FleetReading reading, OfficeForms forms)
    {
        public async Task<IResult> TakeAsync<T>(HttpContext http, string name, IFormCollection form, Func<FormReading, Logbook.Entries.Stamp, T> read)
            where T : Logbook.Entries.ICommand<T>
        {
            // A dock's stock-take is dated by that dock's clock.
            var office = await reading.OfficeAsync(http.User.OperatorOf(), http.RequestAborted);
            var zone = office.Record.Docks.FirstOrDefault(d => d.Dock == form["dock"].ToString().Trim())?.Zone ?? (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!.Zone;
            return await forms.TakeAsync(http, name, form, zone, "/office/spares", read, state => PageAsync(http, state));
        }

        public async Task<IResult> PageAsync(HttpContext http, FormState state)
        {
            var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
            var scene = await Scene.OfAsync(http, operators);
            return PageAnswer.Of<SparesPage>(
                http,
                new
                {
                    Scene = scene,
                    View = await SparesView.OfAsync(http.Request, reading, tenant, ct),
                    Office = await reading.OfficeAsync(tenant, ct),
                    State = state,
                    Entry = forms.NewEntry(),
                    Today = forms.Today(scene.Operator.Zone),
                },
                state.Status);
        }
    }
}
