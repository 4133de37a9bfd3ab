using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;

namespace FleetWake.Journey.Tests.Api;

/// <summary>The description of the API, from which clients are made.</summary>
[Collection(ReadingFleet.Shared)]
public sealed class DescriptionTests(ReadingFleet fleet) : IAsyncLifetime
{
    private JsonObject description = null!;

    public async ValueTask InitializeAsync() =>
        description = (await fleet.Fleet.Http.GetFromJsonAsync<JsonObject>("/openapi/v1.json", TestContext.Current.CancellationToken))!;

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    [Fact]
    public void It_names_every_kind_of_record_with_its_example_and_its_words()
    {
        foreach (var kind in RecordKind.All)
        {
            var operation = description["paths"]!["/api/records/" + kind.Name]!["post"]!;
            Assert.Equal(kind.Example.Entry!.Id.ToString(), Text(operation["requestBody"]!["content"]!["application/json"]!["example"]!["entry"]!["id"]));
        }

        var severity = Schema("ReportStrike")["properties"]!["severity"]!;
        Assert.Contains("bent", severity["enum"]!.AsArray().Select(Text));
    }

    [Fact]
    public void It_says_of_fields_what_the_code_says_of_them()
    {
        Assert.Equal("How hard, by the look of it.", Text(Schema("ReportStrike")["properties"]!["severity"]!["description"]));
        Assert.Contains("[RPM]", Text(Schema("EngineLine")["properties"]!["bandLowRpm"]!["description"]), StringComparison.Ordinal);
        Assert.Equal("A boat in short.", Text(Schema("BoatLine")["description"]));
    }

    [Fact]
    public void A_record_of_a_batch_is_one_of_the_kinds()
    {
        var kinds = Schema("BatchShape")["properties"]!["records"]!["items"]!["oneOf"]!.AsArray();
        Assert.Equal(RecordKind.All.Select(k => k.Name), kinds.Select(k => Text(k!["title"])));
        Assert.All(kinds, k => Assert.NotNull(Schema(Text(k!["allOf"]![1]!["$ref"])["#/components/schemas/".Length..])));
    }

    [Fact]
    public void Every_route_that_reads_says_what_it_answers_and_takes()
    {
        foreach (var (path, item) in description["paths"]!.AsObject().Where(p => p.Value!["get"] is not null))
        {
            var responses = item!["get"]!["responses"]!;
            Assert.True(responses["200"]?["content"] is not null && responses["304"] is not null, path);
            Assert.All(item["get"]!["parameters"]?.AsArray() ?? [], p => Assert.True(Text(p!["in"]) == "path" || p["description"] is not null, path));
        }

        var due = description["paths"]!["/api/due"]!["get"]!["parameters"]!.AsArray();
        Assert.Equal(["day", "dock", "boat", "kind", "limit", "after"], due.Select(p => Text(p!["name"])));
        Assert.Contains("after_strike_inspection", due[3]!["schema"]!["enum"]!.AsArray().Select(Text));
        Assert.NotNull(Schema("RefusalProblem")["properties"]!["errors"]);
    }

    private JsonNode Schema(string name) => description["components"]!["schemas"]![name]!;

    private static string Text(JsonNode? node) => node!.GetValue<string>();
}
