using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Store.Attribution;
using FleetWake.Store.Devices;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Quarantine;
using FleetWake.Store.Records;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Quarantine;

/// <summary>Entries that revoked phones brought: somebody looks at each, and lets it through or leaves it out.</summary>
internal static class QuarantineRoutes
{
    private const int MostShown = 500;

    public static void MapQuarantinePage(this IEndpointRouteBuilder office)
    {
        office.MapGet("quarantine", ShowAsync).NeedsTo(Verb.Read, Matter.Quarantine);
        office.MapPost("quarantine/{entry:guid}/release", ReleaseAsync).NeedsTo(Verb.Decide, Matter.Quarantine);
        office.MapPost("quarantine/{entry:guid}/leave-out", LeaveOutAsync).NeedsTo(Verb.Decide, Matter.Quarantine);
    }

    private static async Task<IResult> ShowAsync(HttpContext http, FleetOperators operators, QuarantineBook quarantine, FleetDevices devices, DockPeople people, FleetReading reading)
    {
        var (scene, ct) = (await Scene.OfAsync(http, operators), http.RequestAborted);
        var tenant = scene.Operator.Id;
        var phones = (await devices.OfAsync(tenant, ct)).ToDictionary(d => d.Id, StringComparer.Ordinal);
        var kept = await quarantine.OfAsync(tenant, MostShown, ct);
        var told = kept.Select(k => KeptWords.Of(k, phones.GetValueOrDefault(k.Device))).ToList();
        var names = (await reading.FindingsAsync(tenant, told.Select(t => t.Boat).OfType<string>().Distinct(StringComparer.Ordinal), ct)).ToDictionary(f => f.Boat, f => f.Finding.DisplayName(), StringComparer.Ordinal);
        var persons = (await people.OfAsync(tenant, ct)).ToDictionary(p => p.Person, p => p.Name, StringComparer.Ordinal);
        return PageAnswer.Of<QuarantinePage>(http, new { Scene = scene, MayDecide = http.User.May(Verb.Decide, Matter.Quarantine), Told = told, Names = names, Persons = persons, Waiting = await quarantine.WaitingAsync(tenant, ct) });
    }

    private static async Task<IResult> ReleaseAsync(Guid entry, HttpContext http, FleetOperators operators, QuarantineBook quarantine, TimeProvider time)
    {
        var scene = await Scene.OfAsync(http, operators);
        await quarantine.ReleaseAsync(scene.Operator.Id, entry, OfficeStamp.Of(scene, time.GetUtcNow()), http.RequestAborted);

        // Why one could not be let through stands beside it.
        return Results.Redirect($"/office/quarantine#e-{entry}");
    }

    private static async Task<IResult> LeaveOutAsync(Guid entry, HttpContext http, QuarantineBook quarantine)
    {
        await quarantine.LeaveOutAsync(http.User.OperatorOf(), entry, http.User.PersonOf()!, http.RequestAborted);
        return Results.Redirect($"/office/quarantine#e-{entry}");
    }
}
