using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Frame;
using FleetWake.Web.Office.Boat;
using FleetWake.Web.Office.Forms;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Register;

/// <summary>What comes into the fleet: boats, engines and props; and where a boat is at home, or laid up.</summary>
internal static class RegisterRoutes
{
    public static void MapRegisterPages(this IEndpointRouteBuilder office)
    {
        office.MapGet("boats/new", (HttpContext http, Shown shown) => shown.BoatAsync(http, FormState.None)).NeedsTo(Verb.Record, Matter.Register);
        office.MapPost("boats/new", (IFormCollection form, HttpContext http, Shown shown) => shown.TakeBoatAsync(http, form, null)).NeedsTo(Verb.Record, Matter.Register);
        office.MapPost("boats/{boat}/registered", (string boat, IFormCollection form, HttpContext http, Shown shown) => shown.TakeBoatAsync(http, form, boat)).NeedsTo(Verb.Record, Matter.Register);
        office.MapPost("boats/{boat}/engine", (string boat, IFormCollection form, HttpContext http, Shown shown) => shown.TakeEngineAsync(http, form, boat)).NeedsTo(Verb.Record, Matter.Register);
        office.MapPost("props/new", (IFormCollection form, HttpContext http, Shown shown) => shown.TakePropAsync(http, form)).NeedsTo(Verb.Record, Matter.Register);
        office.MapGet("props/new", (HttpContext http, Shown shown) => shown.PropAsync(http, FormState.None)).NeedsTo(Verb.Record, Matter.Register);
        OfBoat("laid-up", Verb.Record, Matter.DockWork, (f, stamp, boat, _) => new LayUp(stamp, boat, f.Text("relaunchOn")));
        OfBoat("relaunched", Verb.Record, Matter.DockWork, (_, stamp, boat, _) => new RelaunchBoat(stamp, boat));
        OfBoat("rehomed", Verb.Record, Matter.Register, (f, stamp, boat, docks) => new RehomeBoat(stamp, boat, f.Text("dock"), docks(f.Text("dock")), f.Text("water"), f.Text("bottom")));

        void OfBoat<T>(string name, Verb verb, Matter matter, Func<FormReading, Stamp, string, Func<string?, string?>, T> read)
            where T : ICommand<T> =>
            office.MapPost($"boats/{{boat}}/{name}", async (string boat, IFormCollection form, HttpContext http, BoatReading boats, OfficeForms forms, FleetReading reading) =>
            {
                var record = (await reading.OfficeAsync(http.User.OperatorOf(), http.RequestAborted)).Record;
                return await boats.ZoneAsync(http, boat) is not { } zone
                    ? await BoatRoutes.PageAsync(boat, http, boats, FormState.None)
                    : await forms.TakeAsync(
                        http, name, form, zone, $"/office/boats/{boat}", (f, stamp) => read(f, stamp, boat, d => record.Docks.FirstOrDefault(x => x.Dock == d)?.Zone),
                        state => BoatRoutes.PageAsync(boat, http, boats, state));
            }).NeedsTo(verb, matter);
    }

    /// <summary>Shows the pages, and takes what takes several records.</summary>
    internal sealed class Shown(FleetOperators operators, FleetReading reading, BoatReading boats, OfficeForms forms)
    {
        public async Task<IResult> TakeBoatAsync(HttpContext http, IFormCollection form, string? boat)
        {
            var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
            var office = await reading.OfficeAsync(tenant, ct);
            var dock = office.Record.Docks.FirstOrDefault(d => d.Dock == form["dock"].ToString());
            var zone = dock?.Zone ?? (await operators.FindAsync(tenant, ct))!.Zone;
            var taken = (await reading.StreamsAsync(tenant, StreamName.Boat(""), ct)).Select(s => StreamName.BoatOf(s)!).Append("new").ToList();
            var id = boat ?? (form["boat"].ToString().Trim() is { Length: > 0 } told ? told : NewId.Of(form["name"], taken));
            if (boat is null && taken.Contains(id, StringComparer.OrdinalIgnoreCase))
                return await BoatAsync(http, FormState.Of("registered", form, [new Refusal("/boat", "taken", PageTexts.English.With("register.taken", ("id", id)))]));
            return await forms.TakeSeveralAsync(
                http, "registered", form, zone, $"/office/boats/{Uri.EscapeDataString(id)}",
                (f, stamp) =>
                [
                    new RegisterBoat(stamp(0), id.Length == 0 ? null : id, f.Text("name"), f.Text("dock") is { } home ? NewId.Of(home) == home ? home : NewId.Of(home) : null, zone, f.Text("water"), f.Text("positions")?.Split(' ')),
                ],
                state => boat is null ? BoatAsync(http, state) : BoatRoutes.PageAsync(boat, http, boats, state));
        }

        public async Task<IResult> TakeEngineAsync(HttpContext http, IFormCollection form, string boat)
        {
            if (await boats.ZoneAsync(http, boat) is not { } zone) return await BoatRoutes.PageAsync(boat, http, boats, FormState.None);
            return await forms.TakeSeveralAsync(
                http, "engine", form, zone, $"/office/boats/{boat}",
                (f, stamp) =>
                {
                    var hung = new FitEngine(stamp(1), boat, f.Text("position"), f.Text("engine"), f.Number("hours"));

                    // An engine that was on another boat is registered already, with its own numbers.
                    return f.Text("model") is null && f.Text("bandLowRpm") is null && f.Text("gearRatio") is null
                        ? [hung]
                        :
                        [
                            new RegisterEngine(
                                stamp(0), f.Text("engine"), f.Text("model"), f.Number("bandLowRpm"), f.Number("bandHighRpm"), f.Number("gearRatio"), null, null,
                                f.Number("nutTorque"), f.Text("nutTorque") is null ? null : f.Text("nutTorqueUnit"), f.Number("tachometerStepRpm")),
                            hung,
                        ];
                },
                state => BoatRoutes.PageAsync(boat, http, boats, state));
        }

        public async Task<IResult> TakePropAsync(HttpContext http, IFormCollection form)
        {
            var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
            var tag = form["prop"].ToString().Trim();
            if (tag.Length is > 0 and <= 40 && (tag == "new" || (await reading.StreamsAsync(tenant, StreamName.Prop(tag), ct)).Contains(StreamName.Prop(tag))))
                return await PropAsync(http, FormState.Of("prop-new", form, [new Refusal("/prop", "taken", PageTexts.English.With("register.taken", ("id", tag)))]));
            return await forms.TakeSeveralAsync(
                http, "prop-new", form, (await operators.FindAsync(tenant, ct))!.Zone, $"/office/props/{Uri.EscapeDataString(tag)}",
                (f, stamp) =>
                {
                    List<ICommand> records =
                    [
                        new RegisterProp(stamp(0), f.Text("prop"), f.Number("diameterInches"), f.Number("pitchInches"), f.Whole("blades"), f.Text("material"), f.Text("rotation")),
                        new AcquireProp(stamp(1), f.Text("prop"), f.Text("condition")),
                    ];
                    if (f.Text("dock") is { } dock) records.Add(new StoreProp(stamp(2), f.Text("prop"), dock));
                    return records;
                },
                state => PropAsync(http, state));
        }

        public async Task<IResult> BoatAsync(HttpContext http, FormState state)
        {
            var scene = await Scene.OfAsync(http, operators);
            return PageAnswer.Of<NewBoatPage>(
                http, new { Scene = scene with { Path = "/office" }, Office = await reading.OfficeAsync(scene.Operator.Id, http.RequestAborted), State = state, Entry = forms.NewEntry() }, state.Status);
        }

        public async Task<IResult> PropAsync(HttpContext http, FormState state)
        {
            var scene = await Scene.OfAsync(http, operators);
            return PageAnswer.Of<NewPropPage>(
                http,
                new
                {
                    Scene = scene with { Path = "/office/props" },
                    Office = await reading.OfficeAsync(scene.Operator.Id, http.RequestAborted),
                    State = state,
                    Entry = forms.NewEntry(),
                    Today = forms.Today(scene.Operator.Zone),
                },
                state.Status);
        }
    }
}
