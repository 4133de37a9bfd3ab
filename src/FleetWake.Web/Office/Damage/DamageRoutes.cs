using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Damage;

/// <summary>Claims for damage on hire, and the statement that is printed of each.</summary>
internal static class DamageRoutes
{
    public static void MapDamagePages(this IEndpointRouteBuilder office)
    {
        office.MapGet("claims", (HttpContext http, Shown shown) => shown.ListAsync(http, FormState.Asked(http.Request), http.Request.Query["boat"].ToString())).NeedsTo(Verb.Read, Matter.Money);
        office.MapGet("claims/{claim}/statement", (string claim, HttpContext http, Shown shown) => shown.StatementAsync(http, IdOf(claim), FormState.Asked(http.Request))).NeedsTo(Verb.Read, Matter.Money);
        office.MapGet("claims/{claim}", (string claim) => Results.Redirect($"/office/claims/{IdOf(claim)}/statement")).NeedsTo(Verb.Read, Matter.Money);
        office.MapPost("claims/opened", async (IFormCollection form, HttpContext http, Shown shown, OfficeForms forms) =>
            await forms.TakeAsync(
                http, "opened", form, await shown.ZoneAsync(http, form["boat"].ToString()), "/office/claims",
                (f, stamp) => new OpenClaim(stamp, f.Text("boat"), f.Text("position"), f.Text("hire"), f.Entry("strike"), f.Amount("deposit"), f.Text("deposit") is null ? null : f.Currency("depositCurrency"), f.Text("deadline")),
                state => shown.ListAsync(http, state, form["boat"].ToString()))).NeedsTo(Verb.Record, Matter.Money);
        Takes("costed", Verb.Record, (f, claim, boat, stamp) => new CostClaim(stamp, boat, claim, f.Text("stage"), f.Amount("amount"), f.Currency("currency")));
        Takes("closed", Verb.Decide, (f, claim, boat, stamp) => new CloseClaim(
            stamp, boat, claim, f.Text("outcome"), f.Text("outcome") == "recovered" ? f.Amount("amount") : null, f.Text("outcome") == "recovered" ? f.Currency("currency") : null));

        void Takes<T>(string name, Verb verb, Func<FormReading, Guid, string, Stamp, T> read)
            where T : ICommand<T> =>
            office.MapPost($"claims/{{claim}}/{name}", async (string claim, IFormCollection form, HttpContext http, Shown shown, OfficeForms forms, FleetReading reading) =>
            {
                var id = IdOf(claim);

                // The boat is the record's, not the form's: a claim is costed where it was opened.
                if ((await reading.BoatsOfEntryAsync(http.User.OperatorOf(), id, http.RequestAborted)).FirstOrDefault() is not { } boat) return await shown.StatementAsync(http, id, FormState.None);
                return await forms.TakeAsync(
                    http, name, form, await shown.ZoneAsync(http, boat), $"/office/claims/{id}/statement", (f, stamp) => read(f, id, boat, stamp), state => shown.StatementAsync(http, id, state));
            }).NeedsTo(verb, Matter.Money);
    }

    // What is no id is the id of nothing.
    private static Guid IdOf(string claim) => Guid.TryParse(claim, out var id) ? id : Guid.Empty;

    /// <summary>Shows the pages.</summary>
    internal sealed class Shown(FleetOperators operators, FleetPeople people, FleetReading reading, DamageReading damage, OfficeForms forms)
    {
        public async Task<string> ZoneAsync(HttpContext http, string boat)
        {
            var tenant = http.User.OperatorOf();
            return (await reading.FindingAsync(tenant, boat, http.RequestAborted))?.Finding.Registered?.DockZone ?? (await operators.FindAsync(tenant, http.RequestAborted))!.Zone;
        }

        public async Task<IResult> ListAsync(HttpContext http, FormState state, string boat)
        {
            var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
            var scene = await Scene.OfAsync(http, operators);
            return PageAnswer.Of<ClaimsPage>(
                http,
                new
                {
                    Scene = scene,
                    Claims = await damage.AllAsync(tenant, ct),
                    Boats = (IReadOnlyList<(string, string)>)[.. (await reading.FindingsAsync(tenant, ct)).Where(f => f.Finding is { Registered: not null, Retired: null }).Select(f => (f.Boat, f.Finding.DisplayName()))],
                    Open = boat.Length is > 0 and <= 40 ? await damage.BoatAsync(tenant, boat, ct) : null,
                    State = state,
                    Entry = forms.NewEntry(),
                    Today = forms.Today(scene.Operator.Zone),
                    Currency = (await reading.OfficeAsync(tenant, ct)).Record.Prices.LastOrDefault()?.Money.Currency ?? "",
                },
                state.Status);
        }

        public async Task<IResult> StatementAsync(HttpContext http, Guid claim, FormState state)
        {
            var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
            var scene = await Scene.OfAsync(http, operators);
            if (await damage.OneAsync(tenant, claim, ct) is not { } view)
                return PageAnswer.Of<NotHerePage>(http, new { Scene = scene, Sentence = PageTexts.English["claims.unknown"] }, StatusCodes.Status404NotFound);
            return PageAnswer.Of<StatementPage>(http, new { Scene = scene, View = view, People = await people.NamesAsync(tenant, ct), State = state, Entry = forms.NewEntry(), Today = forms.Today(await ZoneAsync(http, view.Card.Boat)) }, state.Status);
        }
    }
}
