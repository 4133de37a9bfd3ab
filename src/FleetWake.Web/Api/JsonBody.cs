using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Api;

/// <summary>Reads a body that should be JSON, and says where it is not.</summary>
internal static class JsonBody
{
    private static readonly JsonSerializerOptions Strict = new(LogbookJson.Options) { UnmappedMemberHandling = System.Text.Json.Serialization.JsonUnmappedMemberHandling.Disallow };

    /// <summary>The body; or what is wrong with it.</summary>
    public static async Task<(JsonNode? Node, IResult? Malformed)> ReadAsync(HttpContext http)
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

    /// <summary>The body as an object of a shape; or what is wrong with it.</summary>
    public static async Task<(T? Value, IResult? Wrong)> ReadAsync<T>(HttpContext http)
        where T : class
    {
        var (node, malformed) = await ReadAsync(http);
        if (malformed is not null) return (null, malformed);
        try
        {
            return node is JsonObject && node.Deserialize<T>(Strict) is { } value ? (value, null) : (null, Problems.Field("", "not_an_object", "send a JSON object"));
        }
        catch (JsonException e)
        {
            var field = (e.Path ?? "$")[1..].Replace('.', '/');
            return (null, Problems.Field(field, "wrong_type", $"\"{field.TrimStart('/')}\" is not a field of this request, or not of the kind that belongs here"));
        }
    }

    /// <summary>The text that a value is; null when it is none.</summary>
    public static string? Text(JsonNode? node) => node is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
