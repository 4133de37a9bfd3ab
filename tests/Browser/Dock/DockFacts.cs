using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Tests.Program;

namespace FleetWake.Browser.Tests.Dock;

/// <summary>What the office has on record, read from the server.</summary>
internal static class DockFacts
{
    /// <summary>The facts of a stream, e.g. of <c>boats/tern</c>, of one kind.</summary>
    public static async Task<IReadOnlyList<JsonObject>> FactsAsync(this BrowsedFleet fleet, string of, string kind, CancellationToken ct)
    {
        using var response = await fleet.Fleet.Http.GetAsync($"/api/{of}/history?kind={kind}&limit=200", ct);
        if (response.StatusCode == System.Net.HttpStatusCode.NotFound) return [];
        response.EnsureSuccessStatusCode();
        return [.. (await response.Content.ReadFromJsonAsync<JsonObject>(ct))!["items"]!.AsArray().Select(i => i!.AsObject())];
    }

    /// <summary>When a fact happened, with the error of the phone's clock taken off.</summary>
    public static DateTimeOffset Happened(this JsonObject item)
    {
        var entry = item["record"]!["entry"]!;
        return entry["happenedAt"]!.GetValue<DateTimeOffset>().AddSeconds(-(entry["clockAheadSeconds"]?.GetValue<double>() ?? 0));
    }

    /// <summary>A fact is of these minutes, whatever the phone's clock showed.</summary>
    public static void HappenedNow(JsonObject item) => Assert.InRange((item.Happened() - TimeProvider.System.GetUtcNow()).Duration(), TimeSpan.Zero, TimeSpan.FromMinutes(5));

    /// <summary>Waits until there are so many facts of a kind, looks again a moment later, and returns them.</summary>
    public static async Task<IReadOnlyList<JsonObject>> ExactlyAsync(this BrowsedFleet fleet, int count, string of, string kind, CancellationToken ct)
    {
        await RunningFleet.UntilAsync($"{count} {kind} of {of}", async () => (await fleet.FactsAsync(of, kind, ct)).Count >= count, ct, TimeSpan.FromSeconds(20));
        await Task.Delay(300, ct);
        var facts = await fleet.FactsAsync(of, kind, ct);
        Assert.Equal(count, facts.Count);
        return facts;
    }
}
