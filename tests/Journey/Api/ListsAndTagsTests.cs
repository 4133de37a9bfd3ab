using System.Net;
using System.Text.Json.Nodes;

namespace FleetWake.Journey.Tests.Api;

/// <summary>How lists are walked, what a query may say, and how an unchanged answer is told.</summary>
[Collection(ReadingFleet.Shared)]
public sealed class ListsAndTagsTests(ReadingFleet fleet)
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_list_is_walked_page_by_page_and_what_comes_in_between_repeats_nothing_and_leaves_nothing_out()
    {
        var first = await fleet.OneAsync("/api/boats?dock=new-mole&limit=2");
        await fleet.SendAsync([fleet.Named("bare-0", "Bare 0"), fleet.Named("bare-2b", "Bare 2b")]);

        List<string> seen = [.. Boats(first)];
        for (var next = first["next"]; next is not null;)
        {
            var page = await fleet.OneAsync($"/api/boats?dock=new-mole&limit=2&after={next.GetValue<string>()}");
            Assert.InRange(page["items"]!.AsArray().Count, 1, 2);
            seen.AddRange(Boats(page));
            next = page["next"];
        }

        // bare-0 came in before the cursor, bare-2b behind it.
        Assert.Equal(["bare-1", "bare-2", "bare-2b", "bare-3", "bare-4", "bare-5"], seen);
    }

    [Theory]
    [InlineData("/api/boats/tern/history", 10)]
    [InlineData("/api/mountings", 3)]
    [InlineData("/api/engines", 2)]
    [InlineData("/api/props", 3)]
    [InlineData("/api/parts", 1)]
    public async Task Pages_of_one_hold_the_whole_list_in_its_order(string path, int count)
    {
        var whole = (await fleet.ItemsAsync(path)).Select(i => i!.ToJsonString()).ToList();
        var seen = new List<string>();
        var after = "";
        do
        {
            var page = await fleet.OneAsync($"{path}?limit=1{after}");
            seen.Add(Assert.Single(page["items"]!.AsArray())!.ToJsonString());
            after = page["next"] is { } next ? "&after=" + next.GetValue<string>() : "";
        }
        while (after.Length > 0);
        Assert.Equal(count, seen.Count);
        Assert.Equal(whole, seen);
    }

    [Fact]
    public async Task Every_parameter_that_cannot_be_used_is_named_at_once_with_what_can()
    {
        var refused = await fleet.RefusedAsync("/api/due?dok=x&limit=0&day=tomorrow&kind=tea&dock=a%20b&boat=");
        Assert.Equal(["boat", "day", "dock", "dok", "kind", "limit"], refused.Keys.Order(StringComparer.Ordinal));
        Assert.Contains("day, dock, boat, kind, limit, after", refused["dok"], StringComparison.Ordinal);
        Assert.Contains("1 to 200", refused["limit"], StringComparison.Ordinal);
        Assert.Contains("six_monthly_inspection", refused["kind"], StringComparison.Ordinal);
        Assert.Contains("once", (await fleet.RefusedAsync("/api/boats?q=a&q=b"))["q"], StringComparison.Ordinal);
        Assert.Contains("none", (await fleet.RefusedAsync("/api/boats/tern?Dock=x"))["Dock"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cursor_is_one_of_this_list_or_it_is_refused()
    {
        var other = (await fleet.OneAsync("/api/engines?limit=1"))["next"]!.GetValue<string>();
        Assert.Contains("after", (await fleet.RefusedAsync("/api/boats?after=" + other)).Keys);
        Assert.Contains("after", (await fleet.RefusedAsync("/api/boats?after=nonsense")).Keys);
        Assert.Contains("after", (await fleet.RefusedAsync("/api/boats?after=bnVsbA")).Keys); // null
        Assert.Contains("after", (await fleet.RefusedAsync("/api/boats?after=WyJib2F0cyJd")).Keys); // ["boats"], without a place
    }

    [Theory]
    [InlineData("/api/boats/bare-5")]
    [InlineData("/api/boats?dock=new-mole&q=bare%205")]
    [InlineData("/api/due?day=2026-10-01")]
    [InlineData("/api/boats/tern/history")]
    public async Task Who_has_the_answer_already_is_told_so_and_gets_no_body(string path)
    {
        using var first = await fleet.Fleet.Http.GetAsync(path, Ct);
        var tag = first.Headers.ETag!;
        Assert.False(tag.IsWeak);
        Assert.True(first.Headers.CacheControl is { Private: true, NoCache: true });
        foreach (var known in (string[])[tag.ToString(), "W/" + tag, $"\"other\", {tag}", "*"])
        {
            using var again = await AskAsync(path, known);
            Assert.Equal((HttpStatusCode.NotModified, tag), (again.StatusCode, again.Headers.ETag));
            Assert.Empty(await again.Content.ReadAsByteArrayAsync(Ct));
        }

        using var stale = await AskAsync(path, "\"other\"");
        Assert.Equal(HttpStatusCode.OK, stale.StatusCode);
    }

    [Fact]
    public async Task A_new_record_changes_the_tag_of_what_it_bears_on()
    {
        using var before = await fleet.Fleet.Http.GetAsync("/api/boats/bare-4/history", Ct);
        await fleet.SendAsync([new Logbook.Strikes.ReportStrike(fleet.Dock.At("2026-03-02T10:00:00"), "bare-4", "single", "rock", "no_mark")]);
        using var after = await AskAsync("/api/boats/bare-4/history", before.Headers.ETag!.ToString());
        Assert.Equal(HttpStatusCode.OK, after.StatusCode);
        Assert.NotEqual(before.Headers.ETag, after.Headers.ETag);
    }

    [Theory]
    [InlineData("/api/boats")]
    [InlineData("/api/boats/tern/history")]
    [InlineData("/openapi/v1.json")]
    [InlineData("/health/live")]
    public async Task A_head_is_answered_like_a_get_without_its_body(string path)
    {
        using var whole = await fleet.Fleet.Http.GetAsync(path, Ct);
        using var head = await SendAsync("HEAD", path);
        Assert.Equal(HttpStatusCode.OK, head.StatusCode);
        Assert.Equal((whole.Headers.ETag, whole.Content.Headers.ContentType), (head.Headers.ETag, head.Content.Headers.ContentType));
        Assert.Empty(await head.Content.ReadAsByteArrayAsync(Ct));
    }

    [Theory]
    [InlineData("GET", "/api/records/strike_reported", 405, "takes POST, not GET. What can be read begins with /api/")]
    [InlineData("POST", "/api/boats", 405, "takes GET, not POST. Records go to /api/records/KIND")]
    [InlineData("DELETE", "/api/records/strike_reported", 405, "never changed or deleted")]
    [InlineData("PUT", "/api/boats/tern", 405, "never changed or deleted")]
    [InlineData("GET", "/api/boots", 404, "What can be read begins with /api/")]
    [InlineData("POST", "/api/records/tea", 404, "KIND is one of boat_registered")]
    public async Task What_no_route_takes_is_answered_with_where_to_go(string method, string path, int status, string says)
    {
        using var response = await SendAsync(method, path);
        Assert.Equal(status, (int)response.StatusCode);
        var detail = JsonNode.Parse(await response.Content.ReadAsStringAsync(Ct))!["detail"]!.GetValue<string>();
        Assert.Contains(says, detail, StringComparison.Ordinal);
        Assert.Equal(method is "DELETE" or "PUT", detail.Contains("never changed or deleted", StringComparison.Ordinal));
        Assert.Equal(method == "POST", detail.Contains("KIND is one of", StringComparison.Ordinal));
    }

    private async Task<HttpResponseMessage> SendAsync(string method, string path)
    {
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        return await fleet.Fleet.Http.SendAsync(request, Ct);
    }

    private async Task<HttpResponseMessage> AskAsync(string path, string known)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, path);
        request.Headers.TryAddWithoutValidation("If-None-Match", known);
        return await fleet.Fleet.Http.SendAsync(request, Ct);
    }

    private static IEnumerable<string> Boats(JsonObject page) => page["items"]!.AsArray().Select(b => b!["boat"]!.GetValue<string>());
}
