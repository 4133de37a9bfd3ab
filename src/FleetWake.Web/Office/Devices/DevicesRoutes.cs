using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Attribution;
using FleetWake.Store.Devices;
using FleetWake.Store.Operators;
using FleetWake.Web.Dock;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Devices;

/// <summary>Phones at the docks: which there are, a code for another one, the end of one, and start codes for PINs.</summary>
internal static class DevicesRoutes
{
    public static void MapDevicesPage(this IEndpointRouteBuilder office)
    {
        office.MapGet("devices", ShowAsync).NeedsTo(Verb.Read, Matter.Devices);
        office.MapPost("devices/code", CodeAsync).NeedsTo(Verb.Decide, Matter.Devices);
        office.MapPost("devices/pin", PinAsync).NeedsTo(Verb.Decide, Matter.Devices);
        office.MapPost("devices/{device}/revoke", RevokeAsync).NeedsTo(Verb.Decide, Matter.Devices);
    }

    private static async Task<IResult> ShowAsync(HttpContext http, Desk desk) => Page(http, await desk.LookAsync(http));

    /// <summary>The code is shown in the answer to the form, against the custom of a redirect: an address would keep it in logs, and it is seen once.</summary>
    private static async Task<IResult> CodeAsync(HttpContext http, Desk desk, FleetDevices devices, SiteAddress address)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var look = await desk.LookAsync(http);
        var check = new Check();
        var name = check.Name(form["name"], "name");
        var dock = look.Docks.FirstOrDefault(d => d.Id == form["dock"]);
        if (dock is null) check.Refuse("dock", "missing", "choose the dock that the phone belongs to");
        if (check.Decide(() => new Decision.Keep([], [])) is Decision.Refuse refused)
            return Page(http, look with { Typed = form["name"].ToString(), Chosen = form["dock"].ToString(), Wrong = refused.Refusals }, StatusCodes.Status422UnprocessableEntity);
        var (code, stored) = await devices.MakeCodeAsync(look.Scene.Operator.Id, dock!.Id, name, look.Scene.Person, http.RequestAborted);
        return PageAnswer.Of<DeviceCodePage>(http, new { look.Scene, Dock = dock, Name = name, Link = $"{address.Of(http.Request)}/dock/enrol#{code}", stored.Until });
    }

    private static async Task<IResult> PinAsync(HttpContext http, Desk desk, DockPins pins)
    {
        var form = await http.Request.ReadFormAsync(http.RequestAborted);
        var look = await desk.LookAsync(http);
        if (look.People.FirstOrDefault(p => p.Person == form["person"]) is not { } person)
            return Page(http, look with { Wrong = [new Refusal("person", "missing", "choose who is to set a PIN")] }, StatusCodes.Status422UnprocessableEntity);
        var code = await pins.MakeStartCodeAsync(look.Scene.Operator.Id, person.Person, http.RequestAborted);
        return PageAnswer.Of<PinCodePage>(http, new { look.Scene, Person = person, Code = code });
    }

    private static async Task<IResult> RevokeAsync(string device, HttpContext http, Desk desk, FleetDevices devices, OfficeRecords records, TimeProvider time)
    {
        var look = await desk.LookAsync(http);
        if (look.Devices.Any(d => d.Id == device))
        {
            // The end first: a record that cannot be written just now must not keep a lost phone alive. Its id is of the device, so that a second press is a repeat.
            var tenant = look.Scene.Operator.Id;
            await devices.RevokeAsync(tenant, device, http.RequestAborted);
            await records.TakeAsync(http, new RevokeDevice(OfficeStamp.Of(look.Scene, time.GetUtcNow(), $"device_revoked/{tenant}/{device}"), device));
        }

        return Results.Redirect("/office/devices");
    }

    private static IResult Page(HttpContext http, DevicesLook look, int status = StatusCodes.Status200OK) => PageAnswer.Of<DevicesPage>(http, new { Look = look }, status);
}

/// <summary>Gathers what the page shows.</summary>
internal sealed class Desk(FleetOperators operators, FleetDevices devices, DockPlaces places, DockPeople people)
{
    public async Task<DevicesLook> LookAsync(HttpContext http)
    {
        var (scene, ct) = (await Scene.OfAsync(http, operators), http.RequestAborted);
        var tenant = scene.Operator.Id;
        return new DevicesLook(
            scene, http.User.May(Verb.Decide, Matter.Devices), await devices.OfAsync(tenant, ct), await places.AllAsync(tenant, ct), await people.OfAsync(tenant, ct));
    }
}

/// <summary>What the page shows.</summary>
public sealed record DevicesLook(
    Scene Scene, bool MayDecide, IReadOnlyList<DeviceCard> Devices, IReadOnlyList<DockPlace> Docks, IReadOnlyList<DockPerson> People)
{
    /// <summary>The name that was typed, where the form comes back.</summary>
    public string Typed { get; init; } = "";

    /// <summary>The dock that was chosen.</summary>
    public string Chosen { get; init; } = "";

    /// <summary>What is wrong with the form.</summary>
    public IReadOnlyList<Refusal> Wrong { get; init; } = [];

    /// <summary>What is wrong with a field; null when nothing is.</summary>
    public string? WrongAt(string field) => Wrong.FirstOrDefault(r => r.Field == field)?.Message;

    /// <summary>Name of a dock.</summary>
    public string DockName(string dock) => Docks.FirstOrDefault(d => d.Id == dock)?.Name ?? dock;
}
