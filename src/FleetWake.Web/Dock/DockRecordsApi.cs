using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Quarantine;
using FleetWake.Store.Records;
using FleetWake.Web.Api;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Dock;

/// <summary>Where a phone empties its outbox: the same reading and the same recorder as the API's. What a revoked phone brings is kept back.</summary>
internal static class DockRecordsApi
{
    public static void MapDockRecords(this IEndpointRouteBuilder dock) => dock.MapPost("records", TakeAsync);

    private static async Task<IResult> TakeAsync(HttpContext http, Recorder recorder, QuarantineBook quarantine, TimeProvider time)
    {
        var (batch, wrong) = await RecordsApi.ReadBatchAsync(http, time);
        if (wrong is not null) return wrong;
        var (tenant, ct) = (http.User.OperatorOf(), http.RequestAborted);
        if (batch!.Arrival.Device != http.User.DeviceOf())
            return Problems.Field("/device", "other_device", $"this token is of device {http.User.DeviceOf()}: give that id, or sign in as the other device");
        var answer = await batch.AnswerAsync(async (kind, record) =>
            DockKinds.Refusal(kind, record) is { } refusal ? RecordsApi.Refused(refusal)
            : http.User.IsRevoked() ? await KeepAsync(tenant, kind, record, batch.Arrival, quarantine, ct)
            : await RecordsApi.TakeAsync(tenant, kind, record, batch.Arrival, recorder, ct));

        // After they are kept: a card that was asked for later, and is up to date, has them.
        http.Response.Headers[TodayApi.MadeAt] = time.GetUtcNow().ToString("o");
        return Results.Json(answer);
    }

    private static async Task<Answer> KeepAsync(string tenant, RecordKind kind, JsonObject record, Arrival arrival, QuarantineBook quarantine, CancellationToken ct)
    {
        var raw = record.ToJsonString();
        var (command, refusals) = RecordReading.Read(kind, record);
        if (command is null) return RecordsApi.Refused([.. refusals]);
        return command.Entry?.Id is { } id && id != Guid.Empty
            ? await quarantine.KeepAsync(tenant, kind, command, raw, arrival, ct)
            : RecordsApi.Refused(new Refusal("/entry/id", "missing", "missing: the device makes a UUID for each entry"));
    }
}
