using System.Globalization;
using System.Text.Json;
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
        var (node, malformed) = await BodyAsync(http);
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
        var (node, malformed) = await BodyAsync(http);
        if (malformed is not null) return malformed;
        if (node is not JsonObject batch || batch["records"] is not JsonArray records)
            return Problems.Field("/records", "missing", "a batch is an object with \"device\", \"sentAt\" and the list \"records\"");
        if (batch.Select(f => f.Key).FirstOrDefault(f => f is not ("device" or "sentAt" or "records")) is { } unknown)
            return Problems.Field("/" + unknown, "unknown_field", $"\"{unknown}\" is not a field of a batch; its fields are device, sentAt, records");
        if (records.Count > MostRecords)
            return Problems.Field("/records", "too_many", $"send at most {MostRecords} records in a batch");
        if (batch["sentAt"] is { } sentAt && Text(sentAt) is null)
            return Problems.Field("/sentAt", "not_a_time", "give the device's clock at sending with its offset, as in \"2026-05-03T10:15:00+12:00\"");
        var arrival = ReadArrival(Text(batch["device"]), Text(batch["sentAt"]), time, "/");
        if (arrival.Refusal is { } wrong) return Problems.Field(wrong.Field, wrong.Reason, wrong.Message);

        var answers = new List<Answer>(records.Count);
        foreach (var record in records)
        {
            if (record is not JsonObject fields)
            {
                answers.Add(Refused(new Refusal("", "not_an_object", "a record is a JSON object")));
                continue;
            }

            answers.Add(RecordKind.Find(Text(fields["kind"])) is { } kind
                ? await TakeAsync(http.User.OperatorOf(), kind, record, arrival.Arrival!, recorder, http.RequestAborted)
                : Refused(new Refusal("/kind", "unknown_kind", $"give the record's kind, one of {string.Join(", ", RecordKind.All.Select(k => k.Name))}")));
        }

        return Results.Json(new BatchAnswer(answers));
    }

    private static async Task<Answer> TakeAsync(
        string tenant, RecordKind kind, JsonNode? node, Arrival arrival, Recorder recorder, CancellationToken ct)
    {
        var (command, refusals) = RecordReading.Read(kind, node);
        return command is null ? Refused([.. refusals]) : await recorder.TakeAsync(tenant, kind, command, arrival, ct);
    }

    private static Answer Refused(params Refusal[] refusals) => new(null, Outcome.Refused, false, [], [], refusals);

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

    private static async Task<(JsonNode? Node, IResult? Malformed)> BodyAsync(HttpContext http)
    {
        try
        {
            var options = new JsonDocumentOptions { MaxDepth = 16, AllowDuplicateProperties = false };
            var node = await JsonNode.ParseAsync(http.Request.Body, documentOptions: options, cancellationToken: http.RequestAborted);
            ReadEveryText(node);
            return (node, null);
        }
        catch (InvalidOperationException)
        {
            return (null, Problems.Malformed("The body holds text that is no Unicode (half a surrogate pair). Nothing was stored."));
        }
        catch (JsonException e)
        {
            // A field that stands twice is told without a place.
            var place = e.LineNumber is { } line ? $"line {line + 1}, byte {e.BytePositionInLine + 1}" : "a field stands twice in one object";
            return (null, Problems.Malformed($"The body is no JSON that can be read: {place}. Nothing was stored."));
        }
    }

    /// <summary>Text is decoded when it is first read: read it all here, so that none breaks in the middle of a batch.</summary>
    private static void ReadEveryText(JsonNode? node)
    {
        if (node is JsonObject record)
            foreach (var field in record) ReadEveryText(field.Value);
        else if (node is JsonArray list)
            foreach (var item in list) ReadEveryText(item);
        else
            Text(node);
    }

    [GeneratedRegex(@"\A\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d{1,7})?([Zz]|[+-]\d{2}:\d{2})\z")]
    private static partial Regex Instant();

    private static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}

/// <summary>A batch as sent.</summary>
/// <param name="Device">Id of the sending device.</param>
/// <param name="Records">The records, each with its <c>kind</c>.</param>
/// <param name="SentAt">The device's clock at sending, with its offset; left out by importers.</param>
public sealed record BatchShape(string Device, IReadOnlyList<JsonObject> Records, DateTimeOffset? SentAt = null);

/// <summary>The answer to a batch.</summary>
/// <param name="Results">One a record, in the order sent.</param>
public sealed record BatchAnswer(IReadOnlyList<Answer> Results);
