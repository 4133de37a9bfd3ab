using FleetWake.Store.Records;
using FleetWake.Web.Api;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Dock;

/// <summary>Where a phone empties its outbox: the same reading and the same recorder as the API's.</summary>
internal static class DockRecordsApi
{
    public static void MapDockRecords(this IEndpointRouteBuilder dock) => dock.MapPost("records", TakeAsync);

    private static async Task<IResult> TakeAsync(HttpContext http, Recorder recorder, TimeProvider time)
    {
        if (http.User.IsRevoked()) return DeviceHandler.Revoked();
        var (batch, wrong) = await RecordsApi.ReadBatchAsync(http, time);
        if (wrong is not null) return wrong;
        if (batch!.Arrival.Device != http.User.DeviceOf())
            return Problems.Field("/device", "other_device", $"this token is of device {http.User.DeviceOf()}: give that id, or sign in as the other device");
        return Results.Json(await batch.AnswerAsync(async (kind, record) =>
            DockKinds.Refusal(kind, record) is { } refusal ? RecordsApi.Refused(refusal) : await RecordsApi.TakeAsync(http.User.OperatorOf(), kind, record, batch.Arrival, recorder, http.RequestAborted)));
    }
}
