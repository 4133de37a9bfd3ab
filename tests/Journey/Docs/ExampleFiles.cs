using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Logbook.Entries;
using FleetWake.Web.Api.Reading;

namespace FleetWake.Journey.Tests.Docs;

/// <summary>The example requests of <c>docs/examples</c> that are made from the code.</summary>
internal static class ExampleFiles
{
    private const string Head =
        """
        # Made from the code. An editor that knows .http files sends each request as it stands; put your own key in, and send
        # them in order to an operator that has no records yet. "expect" is the status that the tests see.
        @address = http://127.0.0.1:5080
        @key = fw_...

        """;

    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, NewLine = "\n" };

    /// <summary>One record of each kind, and a batch.</summary>
    public static string Records()
    {
        var text = new StringBuilder(Head);
        foreach (var kind in RecordKind.All)
        {
            var record = BatchJson.Write(kind.Example).AsObject();
            record.Remove("kind");
            text.Append(Post(kind.Summary, 201, "/api/records/" + kind.Name, record));
        }

        var batch = new JsonObject { ["device"] = "api", ["records"] = new JsonArray([.. RecordKind.All.Take(2).Select(k => BatchJson.Write(k.Example))]) };
        text.Append(Post("Several records in one request, as a phone empties its outbox. These were sent before: a repeat is harmless.", 200, "/api/records", batch));
        return text.ToString();
    }

    /// <summary>Every reading route.</summary>
    public static string Reading()
    {
        var text = new StringBuilder(Head);
        foreach (var route in RouteTables.Routes())
        {
            var summary = route.Metadata.GetMetadata<Microsoft.AspNetCore.Http.Metadata.IEndpointSummaryMetadata>()?.Summary;
            foreach (var request in route.Metadata.GetOrderedMetadata<ExampleRequest>())
                text.Append($"\n### {summary}\n# expect 200\nGET {{{{address}}}}{request.Path}\nAuthorization: Bearer {{{{key}}}}\n");
        }

        return text.ToString();
    }

    private static string Post(string title, int status, string path, JsonObject body) =>
        $"\n### {title}\n# expect {status}\nPOST {{{{address}}}}{path}\nAuthorization: Bearer {{{{key}}}}\nContent-Type: application/json\n\n{body.ToJsonString(Indented)}\n";
}
