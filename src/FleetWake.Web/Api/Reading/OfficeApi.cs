using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Policies;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>What the operator settled: its policy, and its docks, people, devices, schedules and prices.</summary>
internal static class OfficeApi
{
    public static void MapOffice(this IEndpointRouteBuilder read)
    {
        read.MapGet("policy", PolicyAsync).Produces<FleetPolicy>()
            .Is("policy", "By which rules something is due, and what keeps a boat from hire. What the operator did not set is as usual in the trade.", "/api/policy");
        read.MapGet("office", OfficeAsync).Produces<OfficeRecord>()
            .Is("office", "Docks, people, devices, schedules and prices as told last.", "/api/office");
    }

    private static async Task<IResult> PolicyAsync(HttpContext http, FleetReading reading) =>
        TaggedJson.Of(await reading.PolicyAsync(http.User.OperatorOf(), http.RequestAborted));

    private static async Task<IResult> OfficeAsync(HttpContext http, FleetReading reading) =>
        TaggedJson.Of(OfficeRecord.Of((await reading.LogsAsync(http.User.OperatorOf(), [StreamName.Operator], http.RequestAborted))[StreamName.Operator]));
}
