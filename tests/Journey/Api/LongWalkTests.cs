using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Web.Api.Reading;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;

namespace FleetWake.Journey.Tests.Api;

/// <summary>A filter that matches little in a fleet of a thousand things.</summary>
public sealed class LongWalkTests
{
    private static readonly Paged<string> Things = new("things", id => [id]);
    private static readonly string[] Ids = [.. Enumerable.Range(0, 1000).Select(i => $"t-{i:D4}")];

    [Fact]
    public async Task Each_request_walks_a_part_and_the_pages_hold_what_matches_once()
    {
        string[] matching = ["t-0000", "t-0255", "t-0256", "t-0700", "t-0999"];
        var (seen, most, requests) = (new List<string>(), 0, 0);
        for (var query = ""; ; requests++)
        {
            var looked = 0;
            var page = await PageAsync(query, some =>
            {
                looked += some.Length;
                return Task.FromResult(some.Where(id => matching.Contains(id, StringComparer.Ordinal)));
            });
            most = Math.Max(most, looked);
            seen.AddRange(page["items"]!.AsArray().Select(i => i!.GetValue<string>()));
            if (page["next"] is not { } next) break;
            query = "?limit=2&after=" + next.GetValue<string>();
        }

        Assert.Equal(matching, seen);
        Assert.InRange(most, 1, 300);
        Assert.InRange(requests, 3, 6);
    }

    private static async Task<JsonObject> PageAsync(string query, Func<string[], Task<IEnumerable<string>>> tell)
    {
        await using var services = new ServiceCollection().AddLogging().BuildServiceProvider();
        using var body = new MemoryStream();
        var http = new DefaultHttpContext { RequestServices = services, Response = { Body = body } };
        http.Request.Method = "GET";
        http.Request.QueryString = new QueryString(query);
        http.SetEndpoint(new Endpoint(null, new EndpointMetadataCollection(Things.Limit, Things.After), null));
        await (await Things.WalkAsync(http, Ids.Reverse(), tell)).ExecuteAsync(http);
        return JsonSerializer.Deserialize<JsonObject>(body.ToArray())!;
    }
}
