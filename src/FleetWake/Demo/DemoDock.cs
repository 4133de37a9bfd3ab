using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Commands;

namespace FleetWake.Demo;

/// <summary>The docks of the demo: sends the invented record through the public batch endpoint, as phones would.</summary>
internal sealed class DemoDock : IDisposable
{
    private const int SayEvery = 500;
    private const int PhonesAtOnce = 4;
    private readonly HttpClient client;
    private readonly TimeProvider time;

    public DemoDock(string address, string key, TimeProvider time)
    {
        this.time = time;
        client = new HttpClient { BaseAddress = new Uri(address) };
        client.DefaultRequestHeaders.Authorization = new AuthenticationHeaderValue("Bearer", key);
    }

    /// <summary>Sends everything and returns how many records are kept.</summary>
    public async Task<int> SendAsync(InventedRecord fleet, Action<string> say, CancellationToken ct)
    {
        var tally = new SortedDictionary<string, int>(StringComparer.Ordinal);
        var all = fleet.Batches.Sum(b => b.Records.Count);
        var sent = 0;
        var said = 0;

        // A few phones at once, as on a busy morning. Order of arrival changes nothing that is derived.
        await Parallel.ForEachAsync(fleet.Batches, new ParallelOptions { MaxDegreeOfParallelism = PhonesAtOnce, CancellationToken = ct }, async (batch, token) =>
        {
            await PostAsync(batch, tally, token);
            lock (tally)
            {
                sent += batch.Records.Count;
                if (sent / SayEvery > said && sent < all) say($"sent {sent} of {all} records");
                said = sent / SayEvery;
            }
        });

        say($"sent {sent} of {all} records; {fleet.Refusable.Count} more follow that have to be refused (a wrong unit, a future date, ...)");
        foreach (var wrong in fleet.Refusable) await PostAsync(wrong.Batch, tally, ct);
        say(string.Join(", ", tally.Select(t => $"{t.Key} {t.Value}")));
        return tally.GetValueOrDefault("recorded") + tally.GetValueOrDefault("held");
    }

    public static string WhereToLook(string address, string key) =>
        $"""
          API:      {address}/openapi/v1.json
          boats:    curl -H "Authorization: Bearer {key}" {address}/api/boats
          due list: curl -H "Authorization: Bearer {key}" {address}/api/due
        """;

    public void Dispose() => client.Dispose();

    private async Task PostAsync(DeviceBatch batch, SortedDictionary<string, int> tally, CancellationToken ct)
    {
        using var response = await client.PostAsJsonAsync("/api/records", BatchJson.Write(batch, time.GetUtcNow() + batch.ClockAhead), ct);
        if (!response.IsSuccessStatusCode)
            throw new CommandException($"demo: a batch was answered {(int)response.StatusCode}: {await response.Content.ReadAsStringAsync(ct)}");
        var answer = await response.Content.ReadFromJsonAsync<JsonObject>(ct);
        lock (tally)
        {
            foreach (var result in answer!["results"]!.AsArray())
            {
                var outcome = result!["repeat"]!.GetValue<bool>() ? "repeated" : result["outcome"]!.GetValue<string>();
                tally[outcome] = tally.GetValueOrDefault(outcome) + 1;
            }
        }
    }
}
