using System.Globalization;
using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>What is due.</summary>
internal static class DueApi
{
    private static readonly QueryField<DateOnly?> Day = Query.Date("day", "The day it is seen from; today at each boat's dock unless given.");
    private static readonly QueryField<DutyKind?> Kind = Query.Word<DutyKind>("kind", "Only duties of this kind.");
    private static readonly Paged<DueItem> Duties = new("due", d =>
        [d.DueOn.ToString("o", CultureInfo.InvariantCulture), d.BoatName.ToUpperInvariant(), d.Boat, $"{(int?)d.Position}", Words.Of(d.Kind), d.RuleId, d.Why, $"{d.Strike}"]);

    public static void MapDue(this IEndpointRouteBuilder read) =>
        read.MapGet("due", DueAsync).Lists(Duties, Day, Query.Dock, Query.Boat, Kind)
            .Is("due", "What is due, most overdue first.", "/api/due", "/api/due?day=2027-03-01&dock=north-pier");

    private static async Task<IResult> DueAsync(HttpContext http, FleetReading reading, TimeProvider time)
    {
        var (day, dock, boat, kind) = (Day.In(http), Query.Dock.In(http), Query.Boat.In(http), Kind.In(http));
        var findings = await reading.FindingsAsync(http.User.OperatorOf(), http.RequestAborted);
        var policy = await reading.PolicyAsync(http.User.OperatorOf(), http.RequestAborted);
        return Duties.Answer(http, findings.Select(f => f.Finding)
            .Where(f => f.Registered is not null && (dock is null || f.Registered.Dock == dock) && (boat is null || f.Boat == boat))
            .SelectMany(f => Outlook.Of(f, day ?? TodayAt(f.Registered!.DockZone, time), policy))
            .Where(d => kind is null || d.Kind == kind));
    }

    /// <summary>The calendar date at a dock now.</summary>
    public static DateOnly TodayAt(string zone, TimeProvider time) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time.GetUtcNow(), TimeZoneInfo.FindSystemTimeZoneById(zone)).DateTime);
}
