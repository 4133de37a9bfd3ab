using System.Text;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Digests.DueList;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Api;
using FleetWake.Web.Api.Reading;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Office;

/// <summary>
/// What is due, as a calendar (RFC 5545) that any calendar program can subscribe to. Such programs send no headers, so
/// the key stands in the address: it opens this and nothing else.
/// </summary>
public static class DueCalendar
{
    private static readonly QueryField<string> By = Query.Id("by", "Only what this person took.");

    /// <summary>Address of a key's calendar, without the host.</summary>
    public static string PathOf(string key) => $"/calendar/{key}/due.ics";

    /// <summary>Maps the calendar.</summary>
    public static void MapDueCalendar(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/calendar/{key}/due.ics", ReadAsync).Takes(Query.Dock, By).AddEndpointFilter(StrictQuery.CheckAsync).WithName("due_calendar").ExcludeFromDescription();

    private static async Task<IResult> ReadAsync(string key, HttpContext http, FleetOperators operators, FleetReading reading, SiteAddress site, TimeProvider time)
    {
        var (dock, by, ct) = (Query.Dock.In(http), By.In(http), http.RequestAborted);

        // An unknown key and one that opens something else are told apart to nobody.
        if (await operators.RecognizeAsync(key, ct) is not { } known || !known.Scopes.Contains(KeyScope.Calendar))
            return Problems.NotFound("There is no such calendar. Ask whoever runs your fleet's record for its address.");
        var card = await operators.FindAsync(known.Operator, ct);
        var office = await reading.OfficeAsync(known.Operator, ct);
        var policy = office.Policy;
        var now = time.GetUtcNow();
        var due = (await reading.FindingsAsync(known.Operator, ct)).Select(f => f.Finding)
            .Where(f => f.Registered is not null && (dock is null || f.Registered.Dock == dock))
            .SelectMany(f => Outlook.Of(f, DueApi.TodayAt(f.Registered!.DockZone, time), policy))
            .Where(d => by is null || d.TakenBy == by);
        http.Response.Headers.CacheControl = "private, no-cache";
        return Results.Text(DueCalendarFile.Write(known.Operator, card?.Name ?? known.Operator, card?.Zone, due, now, office.DockName, site.Of(http.Request)), "text/calendar", Encoding.UTF8);
    }
}
