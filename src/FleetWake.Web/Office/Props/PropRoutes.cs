using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Props;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Props;

/// <summary>One prop: where it ran, what it measured and cost, how much longer it may last, and what the office records of it.</summary>
internal static class PropRoutes
{
    public static void MapPropPage(this IEndpointRouteBuilder office)
    {
        office.MapGet("props/{prop}", (string prop, HttpContext http, Shown shown) => shown.PageAsync(http, prop, FormState.Asked(http.Request))).NeedsTo(Verb.Read, Matter.Stock);
        Takes("to-shop", Verb.Record, Matter.Stock, (f, stamp, prop) =>
            new SendPropToShop(stamp, prop, ShopOf(f.Text("shop")), f.Text("wish"), f.Number("pitchWantedInches"), f.Text("dueBackOn")));
        Takes("from-shop", Verb.Record, Matter.Stock, (f, stamp, prop) => new TakePropBackFromShop(stamp, prop, f.Number("pitchInches"), f.Number("diameterInches")));
        Takes("repitched", Verb.Record, Matter.Stock, (f, stamp, prop) =>
            new RepitchProp(stamp, prop, f.Number("pitchAfterInches"), f.Number("pitchBeforeInches"), f.Number("diameterAfterInches")));
        Takes("stored", Verb.Record, Matter.Stock, (f, stamp, prop) => new StoreProp(stamp, prop, f.Text("dock")));
        Takes("given-back", Verb.Record, Matter.Stock, (_, stamp, prop) => new ReturnLoaner(stamp, prop));
        Takes("cost", Verb.Record, Matter.Money, (f, stamp, prop) => new TellPropCost(stamp, prop, f.Text("for"), f.Amount("amount"), f.Currency("currency")));
        Takes("retired", Verb.Decide, Matter.Stock, (f, stamp, prop) => new RetireProp(stamp, prop, f.Text("why")));

        void Takes<T>(string name, Verb verb, Matter matter, Func<FormReading, Stamp, string, T> read)
            where T : ICommand<T> =>
            office.MapPost($"props/{{prop}}/{name}", async (string prop, IFormCollection form, HttpContext http, Shown shown, OfficeForms forms, FleetOperators operators) =>
                await forms.TakeAsync(
                    http, name, form, (await operators.FindAsync(http.User.OperatorOf(), http.RequestAborted))!.Zone, $"/office/props/{Uri.EscapeDataString(prop)}",
                    (f, stamp) => read(f, stamp, prop), state => shown.PageAsync(http, prop, state)))
                .NeedsTo(verb, matter);
    }

    /// <summary>Shows the page.</summary>
    /// <summary>A shop as it is known, or an id made of the name of a new one.</summary>
    private static string? ShopOf(string? told) => told is null || told.All(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_') ? told : Register.NewId.Of(told) is { Length: > 0 } made ? made : told;

    internal sealed class Shown(FleetOperators operators, FleetReading reading, FleetLives lives, OfficeForms forms)
    {
        public async Task<IResult> PageAsync(HttpContext http, string prop, FormState state)
        {
            var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
            var scene = await Scene.OfAsync(http, operators);
            if (await PropView.OfAsync(reading, lives, tenant, prop, ct) is not { } view)
                return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English.With("prop.unknown", ("prop", prop)) }, StatusCodes.Status404NotFound);
            return PageAnswer.Of<PropPage>(
                http,
                new { Scene = scene, View = view, Office = await reading.OfficeAsync(tenant, ct), State = state, Entry = forms.NewEntry(), Today = forms.Today(scene.Operator.Zone) },
                state.Status);
        }
    }
}
