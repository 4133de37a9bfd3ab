using FleetWake.Logbook.People;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.Frame;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office.Fleet;

/// <summary>The fleet at a glance: which boats go out, which must not, which leave their band and when.</summary>
internal static class FleetRoutes
{
    public static void MapFleetPage(this IEndpointRouteBuilder office) =>
        office.MapGet("", ShowAsync).NeedsTo(Verb.Read, Matter.Fleet);

    private static async Task<IResult> ShowAsync(HttpContext http, FleetOperators operators, FleetReading reading, FleetRows rows, TimeProvider time)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);

        // Asked before the findings are read: what comes in between makes them newer.
        var behind = (await reading.StaleBoatsAsync(tenant, ct)).ToHashSet(StringComparer.Ordinal);
        var scene = await Scene.OfAsync(http, operators);
        var office = await reading.OfficeAsync(tenant, ct);
        var findings = await reading.FindingsAsync(tenant, ct);
        var days = new Dictionary<string, DateOnly>(StringComparer.Ordinal);
        DateOnly Today(string zone) => days.TryGetValue(zone, out var day) ? day : days[zone] = DueApi.TodayAt(zone, time);

        var namings = Namings.Of(office, findings);
        var all = findings.Select(f => rows.Of(f, office, Today(f.Finding.Registered?.DockZone ?? scene.Operator.Zone), behind.Contains(f.Finding.Boat), namings)).ToList();
        var filter = FleetFilter.Of(http.Request);
        var shown = all.Where(filter.Takes).OrderBy(r => r.Urgency.Group).ThenBy(r => r.Urgency.Within).ThenBy(r => r.Urgency.Name, StringComparer.Ordinal).ToList();
        return PageAnswer.Of<FleetPage>(http, new
        {
            Scene = scene,
            All = all,
            Shown = shown,
            Written = await rows.WriteAsync(shown, scene.Measures),
            Filter = filter,
            Behind = (IReadOnlyList<string>)[.. behind.Order(StringComparer.Ordinal)],
            Now = time.GetUtcNow(),
            NoMail = http.User.May(Verb.Decide, Matter.Reports) ? await operators.NoMailAsync(tenant, ct) : 0,
            News = FleetNews.Of(findings.Select(f => f.Finding), f => Today(f.Registered?.DockZone ?? scene.Operator.Zone), scene.Measures),
        });
    }
}
