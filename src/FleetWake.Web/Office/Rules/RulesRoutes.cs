using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Policies;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Rules;

/// <summary>By what the fleet is kept: rules of inspection, the hire table, docks, prices, when digests go out.</summary>
internal static class RulesRoutes
{
    public static void MapRulesPage(this IEndpointRouteBuilder office)
    {
        office.MapGet("rules", (HttpContext http, Shown shown) => shown.PageAsync(http, FormState.Asked(http.Request))).NeedsTo(Verb.Read, Matter.Rules);
        Takes("rule", Verb.Decide, Matter.Rules, (f, _, stamp) => new SetInspectionRule(
            stamp, f.Text("rule"), f.Text("name"), f.Text("trigger"), f.Text("doneBy"), f.Whole("months"), f.Number("hours"), f.Text("water"), f.Text("material"), f.Text("dock"), f.Text("off") == "yes"));
        Takes("hire", Verb.Decide, Matter.Rules, (_, form, stamp) => new SetHireStates(stamp, HireGrid.Rows(form)));
        Takes("dock", Verb.Decide, Matter.Register, (f, _, stamp) => new OpenDock(stamp, f.Text("dock"), f.Text("name"), f.Text("zone"), f.Text("water"), f.Text("bottom")));
        Takes("price", Verb.Decide, Matter.Money, (f, _, stamp) => new SetPrice(stamp, f.Text("what"), f.Amount("amount"), f.Currency("currency"), f.Text("item")));
        Takes("schedule", Verb.Decide, Matter.Reports, (f, _, stamp) => new SetSchedule(stamp, f.Text("digest"), f.Text("weekday"), f.Text("localTime")));

        void Takes<T>(string name, Verb verb, Matter matter, Func<FormReading, IFormCollection, Stamp, T> read)
            where T : ICommand<T> =>
            office.MapPost("rules/" + name, async (IFormCollection form, HttpContext http, Shown shown, OfficeForms forms, FleetOperators operators) =>
                await forms.TakeAsync(
                    http, name, form, (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!.Zone, "/office/rules",
                    (f, stamp) => read(f, form, stamp), state => shown.PageAsync(http, state)))
                .NeedsTo(verb, matter);
    }

    /// <summary>Shows the page.</summary>
    internal sealed class Shown(FleetOperators operators, FleetReading reading, OfficeForms forms)
    {
        public async Task<IResult> PageAsync(HttpContext http, FormState state)
        {
            var scene = await Scene.OfAsync(http, operators);
            return PageAnswer.Of<RulesPage>(
                http,
                new { Scene = scene, Office = await reading.OfficeAsync(scene.Operator.Id, http.RequestAborted), State = state, Entry = forms.NewEntry(), Today = forms.Today(scene.Operator.Zone) },
                state.Status);
        }
    }
}
