using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Records;
using FleetWake.Web.SignIn;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FleetWake.Web.Api;

/// <summary>Where records come in: one at a time by kind, or in a batch of kinds as a device's outbox holds them.</summary>
public static partial class RecordsApi
{
    /// <summary>Records in one batch at the most.</summary>
    public const int MostRecords = 500;

    private const string DeviceHeader = "FleetWake-Device";
    private const string SentAtHeader = "FleetWake-Sent-At";

    /// <summary>Maps the routes.</summary>
    public static void MapRecords(this IEndpointRouteBuilder routes)
    {
        var records = routes.MapGroup("/api/records").RequireAuthorization(Words.Of(Store.Operators.KeyScope.Record)).WithTags("Records");
        records.MapPost("", TakeBatchAsync)
            .WithName("record_batch")
            .WithSummary("Takes a batch of records, in the order in which they stand.")
            .WithDescription("Each record is an object with its \"kind\" and the fields of that kind. The answer has one result a record, in the same order; one record's refusal does not stop the others.")
            .Accepts<BatchShape>("application/json")
            .Produces<BatchAnswer>()
            .ProducesProblem(400).ProducesProblem(401).ProducesProblem(403).ProducesProblem(413).ProducesProblem(415).Produces<RefusalProblem>(422, Problems.MediaType).ProducesProblem(503);
        foreach (var kind in RecordKind.All)
        {
            records.MapPost(kind.Name, (HttpContext http, Recorder recorder, TimeProvider time) => TakeOneAsync(kind, http, recorder, time))
                .WithName("record_" + kind.Name)
                .WithMetadata(kind)
                .WithSummary(kind.Summary)
                .WithDescription($"The sending device is named by the header {DeviceHeader}; {SentAtHeader} gives its clock at sending.")
                .Accepts(kind.CommandType, "application/json")
                .Produces<Answer>(201).Produces<Answer>(200).Produces<Answer>(202)
                .ProducesProblem(400).ProducesProblem(401).ProducesProblem(403).Produces<RefusalProblem>(409, Problems.MediaType).ProducesProblem(415).Produces<RefusalProblem>(422, Problems.MediaType).ProducesProblem(503);
        }
    }

    private static async Task<IResult> TakeOneAsync(RecordKind kind, HttpContext http, Recorder recorder, TimeProvider time)
    {
        var (node, malformed) = await JsonBody.ReadAsync(http);
        if (malformed is not null) return malformed;
        var device = http.Request.Headers[DeviceHeader].ToString();
        if (device.Length == 0) device = "api";
        var arrival = ReadArrival(device, http.Request.Headers[SentAtHeader].ToString(), time, "");
        if (arrival.Refusal is { } wrong) return Problems.Field(wrong.Field, wrong.Reason, wrong.Message);

        var answer = await TakeAsync(http.User.OperatorOf(), kind, node, arrival.Arrival!, recorder, http.RequestAborted);
        return answer.Outcome switch
        {
            Outcome.Refused or Outcome.Conflict => Problems.Record(answer),
            _ when answer.Repeat => Results.Ok(answer),
            Outcome.Held => Results.Json(answer, statusCode: StatusCodes.Status202Accepted),
            _ => Results.Json(answer, statusCode: StatusCodes.Status201Created),
        };
    }

    private static async Task<IResult> TakeBatchAsync(HttpContext http, Recorder recorder, TimeProvider time)
    {
        var (batch, wrong) = await ReadBatchAsync(http, time);
        return wrong ?? Results.Json(await batch!.AnswerAsync((kind, record) => TakeAsync(http.User.OperatorOf(), kind, record, batch.Arrival, recorder, http.RequestAborted)));
    }

    /// <summary>A batch as its sender meant it; or what is wrong with it.</summary>
    internal static async Task<(Batch? Batch, IResult? Wrong)> ReadBatchAsync(HttpContext http, TimeProvider time)
    {
        var (node, malformed) = await JsonBody.ReadAsync(http);
        if (malformed is not null) return (null, malformed);
        if (node is not JsonObject batch || batch["records"] is not JsonArray records)
            return (null, Problems.Field("/records", "missing", "a batch is an object with \"device\", \"sentAt\" and the list \"records\""));
        if (batch.Select(f => f.Key).FirstOrDefault(f => f is not ("device" or "sentAt" or "records")) is { } unknown)
            return (null, Problems.Field("/" + unknown, "unknown_field", $"\"{unknown}\" is not a field of a batch; its fields are device, sentAt, records"));
        if (records.Count > MostRecords)
            return (null, Problems.Field("/records", "too_many", $"send at most {MostRecords} records in a batch"));
        if (batch["sentAt"] is { } sentAt && JsonBody.Text(sentAt) is null)
            return (null, Problems.Field("/sentAt", "not_a_time", "give the device's clock at sending with its offset, as in \"2026-05-03T10:15:00+12:00\""));
        var arrival = ReadArrival(JsonBody.Text(batch["device"]), JsonBody.Text(batch["sentAt"]), time, "/");
        if (arrival.Refusal is { } wrong) return (null, Problems.Field(wrong.Field, wrong.Reason, wrong.Message));

        return (new Batch(arrival.Arrival!, records), null);
    }

    /// <summary>Reads a record and takes it.</summary>
    internal static async Task<Answer> TakeAsync(
        string tenant, RecordKind kind, JsonNode? node, Arrival arrival, Recorder recorder, CancellationToken ct)
    {
        var (command, refusals) = RecordReading.Read(kind, node);
        return command is null ? Refused([.. refusals]) : await recorder.TakeAsync(tenant, kind, command, arrival, ct);
    }

    /// <summary>The answer to a record that is not kept.</summary>
    internal static Answer Refused(params Refusal[] refusals) => new(null, Outcome.Refused, false, [], [], refusals);

    private static (Arrival? Arrival, Refusal? Refusal) ReadArrival(string? device, string? sentAt, TimeProvider time, string prefix)
    {
        var check = new Check();
        check.Id(device, prefix.Length > 0 ? "/device" : DeviceHeader);
        if (check.Decide(() => new Decision.Keep([], [])) is Decision.Refuse { Refusals: [var wrong, ..] }) return (null, wrong);
        DateTimeOffset? sent = null;
        if (!string.IsNullOrEmpty(sentAt))
        {
            // Without its offset, a clock that is right would be taken for one that is hours wrong, and every record moved.
            if (!Instant().IsMatch(sentAt) || !DateTimeOffset.TryParse(sentAt, CultureInfo.InvariantCulture, DateTimeStyles.None, out var parsed))
                return (null, new Refusal(prefix.Length > 0 ? "/sentAt" : SentAtHeader, "not_a_time", "give the device's clock at sending with its offset, as in 2026-05-03T10:15:00+12:00"));
            sent = parsed;
        }

        return (new Arrival(device!, time.GetUtcNow(), sent), null);
    }

    [GeneratedRegex(@"\A\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,7})?([Zz]|[+-]\d{2}:\d{2})\z")]
    private static partial Regex Instant();
}

/// <summary>A batch that was read.</summary>
/// <param name="Arrival">How it came.</param>
/// <param name="Records">Its records, each as sent.</param>
internal sealed record Batch(Arrival Arrival, JsonArray Records)
{
    /// <summary>Answers each record in turn; one that is no object, or of no known kind, is refused.</summary>
    public async Task<BatchAnswer> AnswerAsync(Func<RecordKind, JsonObject, Task<Answer>> take)
    {
        var answers = new List<Answer>(Records.Count);
        foreach (var record in Records)
        {
            answers.Add(record is not JsonObject fields ? RecordsApi.Refused(new Refusal("", "not_an_object", "a record is a JSON object"))
                : RecordKind.Find(JsonBody.Text(fields["kind"])) is { } kind ? await take(kind, fields)
                : RecordsApi.Refused(new Refusal("/kind", "unknown_kind", $"give the record's kind, one of {string.Join(", ", RecordKind.All.Select(k => k.Name))}")));
        }

        return new BatchAnswer(answers);
    }
}

/// <summary>A batch as sent.</summary>
/// <param name="Device">Id of the sending device.</param>
/// <param name="Records">The records, each with its <c>kind</c>.</param>
/// <param name="SentAt">The device's clock at sending, with its offset; left out by importers.</param>
public sealed record BatchShape(string Device, IReadOnlyList<JsonObject> Records, DateTimeOffset? SentAt = null);

/// <summary>The answer to a batch.</summary>
/// <param name="Results">One a record, in the order sent.</param>
public sealed record BatchAnswer(IReadOnlyList<Answer> Results);
