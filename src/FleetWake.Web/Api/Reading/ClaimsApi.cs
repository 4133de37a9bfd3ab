using FleetWake.Logbook.Claims;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Histories;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api.Reading;

/// <summary>Claims for damage on hire.</summary>
internal static class ClaimsApi
{
    private static readonly QueryField<ClaimState?> State = Query.Word<ClaimState>("state", "Only claims that stand so.");
    private static readonly Paged<ClaimCard> Claims = new("claims", c => [c.Boat, c.OpenedOn.ToString("yyyy-MM-dd"), c.Claim.ToString()]);

    public static void MapClaims(this IEndpointRouteBuilder read) =>
        read.MapGet("claims", ClaimsAsync).Lists(Claims, Query.Dock, Query.Boat, State)
            .Is("claims", "Every claim, by boat and then in order, with what the record can say for it.", "/api/claims", "/api/claims?boat=linnet");

    private static async Task<IResult> ClaimsAsync(HttpContext http, FleetReading reading)
    {
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        var (dock, boat, state) = (Query.Dock.In(http), Query.Boat.In(http), State.In(http));

        // Few boats have claims: only their histories are told.
        var boats = (await reading.StreamsWithAsync<ClaimOpened>(tenant, ct)).Select(StreamName.BoatOf).OfType<string>().Where(b => boat is null || b == boat);
        return await Claims.WalkAsync(http, boats, async some => (await reading.HistoriesAsync(tenant, some, ct))
            .Where(h => dock is null || h.Registered?.Dock == dock)
            .SelectMany(h => Logbook.Claims.Claims.Of(h.Facts, h.Original))
            .Where(c => state is null || c.State == state));
    }
}
