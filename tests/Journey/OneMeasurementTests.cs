using System.Net.Http.Json;
using System.Text.Json.Nodes;
using FleetWake.Reports.Mail;
using FleetWake.Settings;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using MimeKit;
using Npgsql;

namespace FleetWake.Journey.Tests;

/// <summary>
/// DEVELOPERS.md opens with "Follow one measurement"; this is the same page as a test, on real PostgreSQL, HTTP and
/// SMTP. Its steps are numbered as there.
/// </summary>
public sealed class OneMeasurementTests(PostgresFixture postgres)
{
    [Fact]
    public async Task One_trial_travels_from_the_dock_to_a_mailbox()
    {
        var ct = TestContext.Current.CancellationToken;
        await using var mailbox = Mailbox.Open();
        var mail = mailbox.Settings;
        await using var fleet = await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("journey", ct), mail, ct: ct);
        var dock = new DockRecords();

        // 1 and 2. Entry and decision: the dock's outbox with a boat, five trials, and the measurement that we follow.
        var measurement = dock.Trial("sanderling", "2026-06-01T10:00:00", rpm: 5930, hours: 300);
        var before = Enumerable.Range(0, 5).Select(i => dock.Trial("sanderling", $"2026-0{i + 1}-10T10:00:00", 5660 + (50 * i), 100 + (40 * i)));
        var results = await fleet.SendAsync([.. dock.Outfit("sanderling", "Sanderling"), .. before, measurement], ct);
        Assert.All(results, r => Assert.Equal("recorded", r!["outcome"]!.GetValue<string>()));

        // 3. Fact: one event on the boat's stream, under its stored name, with what was read and nothing derived.
        var stored = await FactAsync(fleet.Database, measurement.Entry!.Id!.Value, ct);
        Assert.Equal("boat/sanderling", stored["stream"]!.GetValue<string>());
        Assert.Equal(5930, stored["data"]!["runs"]![0]!["tachometers"]![0]!["rpm"]!.GetValue<double>());
        Assert.Equal("kn", stored["data"]!["runs"]![0]!["speedUnit"]!.GetValue<string>());

        // 4. History: the daemon folds the stream into the boat's record.
        await RunningFleet.UntilAsync("the boat's history", async () =>
            (await HistoryAsync(fleet, "sanderling", ct))?["items"]?.AsArray().Count == 9, ct);

        // 5. Finding: slip, drift, margin and band exit.
        JsonNode? mounting = null;
        await RunningFleet.UntilAsync("the finding with six trials", async () =>
        {
            var response = await fleet.Http.GetAsync("/api/boats/sanderling/finding", ct);
            if (!response.IsSuccessStatusCode) return false;
            mounting = (await response.Content.ReadFromJsonAsync<JsonNode>(ct))!["finding"]!["positions"]![0]!["mounting"];
            return mounting?["trials"]!.AsArray().Count == 6;
        }, ct);
        Assert.Equal("in_band", Text(mounting!["band"]!["state"]));
        Assert.InRange(mounting["drift"]!["value"]!.GetValue<double>(), 45, 80);
        Assert.Equal("forecast", Text(mounting["exit"]!["state"]));

        // 6. Alarm: the next trial lies above the band, and that is recorded as a fact, once.
        await fleet.SendAsync([dock.Trial("sanderling", "2026-06-20T10:00:00", rpm: 6060, hours: 340)], ct);
        await RunningFleet.UntilAsync("the alarm", async () => await CountAsync(fleet.Database, "alarm_raised", ct, "above_band") == 1, ct);

        // 7 and 8. Picture, digest and mail: somebody subscribes, and the tick does the rest.
        await fleet.SubscribeAsync("manager@skerry-bay.example", ct);
        var message = await mailbox.NextAsync(ct);
        Assert.Equal("manager@skerry-bay.example", Assert.Single(message.To.Mailboxes).Address);
        Assert.Contains("Sanderling", message.HtmlBody, StringComparison.Ordinal);
        Assert.Contains("Sanderling", message.TextBody, StringComparison.Ordinal);
        Assert.Contains(message.BodyParts.OfType<MimePart>(), p => p.ContentType.IsMimeType("image", "png") && p.ContentId is not null);
        await RunningFleet.UntilAsync("the mail's ledger", async () => await CountAsync(fleet.Database, "mail_sent", ct) == 1, ct);
        Assert.Equal(1, await CountAsync(fleet.Database, "digest_issued", ct));
    }

    private static string Text(JsonNode? node) => node!.GetValue<string>();

    private static async Task<JsonNode?> HistoryAsync(RunningFleet fleet, string boat, CancellationToken ct)
    {
        using var response = await fleet.Http.GetAsync($"/api/boats/{boat}/history", ct);
        return response.IsSuccessStatusCode ? await response.Content.ReadFromJsonAsync<JsonNode>(ct) : null;
    }

    private static async Task<JsonObject> FactAsync(string database, Guid entry, CancellationToken ct)
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand("select stream_id, data::text from fleetwake.mt_events where data -> 'entry' ->> 'id' = $1");
        command.Parameters.Add(new NpgsqlParameter { Value = entry.ToString() });
        await using var reader = await command.ExecuteReaderAsync(ct);
        Assert.True(await reader.ReadAsync(ct));
        return new JsonObject { ["stream"] = reader.GetString(0), ["data"] = JsonNode.Parse(reader.GetString(1)) };
    }

    private static async Task<long> CountAsync(string database, string type, CancellationToken ct, string? kind = null)
    {
        await using var source = NpgsqlDataSource.Create(database);
        await using var command = source.CreateCommand("select count(*) from fleetwake.mt_events where type = $1 and data ->> 'kind' is not distinct from coalesce($2, data ->> 'kind')");
        command.Parameters.Add(new NpgsqlParameter { Value = type });
        command.Parameters.Add(new NpgsqlParameter { Value = (object?)kind ?? DBNull.Value, NpgsqlDbType = NpgsqlTypes.NpgsqlDbType.Text });
        return (long)(await command.ExecuteScalarAsync(ct))!;
    }
}
