using System.Diagnostics;
using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Demo;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;
using FleetWake.Settings;
using FleetWake.Store.Histories;
using FleetWake.Store.Records;
using FleetWake.Tests.Kit;
using FleetWake.Tests.Program;
using Marten;

namespace FleetWake.Journey.Tests.Dock;

/// <summary>Phones send late, again, and in any order: what comes of it is what a single clean run makes.</summary>
public sealed class OutboxTests(PostgresFixture postgres)
{
    private const int Boats = 40;
    private const int RecordsOfBoat = 84;
    private const int BatchSize = 250;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Ten_thousand_entries_of_which_each_comes_three_times_shuffled_leave_the_state_of_a_clean_run()
    {
        var time = ShiftedTime.From(new DateTimeOffset(2026, 9, 30, 0, 0, 0, TimeSpan.Zero));
        await using var clean = await FleetAsync("clean", time);
        await using var shuffled = await FleetAsync("shuffled", time);
        var records = Records().Select(r => BatchJson.Write(r).ToJsonString()).ToList();
        Assert.Equal(Boats * RecordsOfBoat, records.Count);
        var mixed = Enumerable.Repeat(records, 3).SelectMany(r => r).ToArray();
        new Random(42).Shuffle(mixed);

        // The clean run goes by the importer's door, in order: the two doors must agree as well.
        var clock = Stopwatch.StartNew();
        var bulk = new BulkRecorder(clean.Service<IDocumentStore>(), RunningFleet.Operator);
        foreach (var chunk in Records().Chunk(BatchSize))
        {
            var taken = await bulk.TakeAsync([.. chunk.Select(r => new Submission(RecordKind.Find(BatchJson.Kind(r))!, r, new Arrival("sheet", time.GetUtcNow(), null)))], Ct);
            Assert.All(taken, a => Assert.Equal(Outcome.Recorded, a.Outcome));
        }

        Assert.Equal(records.Count, await SendAsync(shuffled, mixed));
        TestContext.Current.TestOutputHelper?.WriteLine($"{records.Count} in order and {mixed.Length} shuffled in {clock.Elapsed.TotalSeconds:0} s");

        foreach (var fleet in (RunningFleet[])[clean, shuffled])
            await RunningFleet.UntilAsync("the findings", () => fleet.Service<FleetReading>().UpToDateAsync(Ct), Ct, TimeSpan.FromMinutes(2));
        var (expected, found) = (await StateAsync(clean), await StateAsync(shuffled));
        Assert.Equal(Boats, expected.Count);
        Assert.Equal(expected, found);
    }

    private async Task<RunningFleet> FleetAsync(string name, TimeProvider time) =>
        await RunningFleet.StartAsync(await postgres.NewDatabaseAsync("outbox_" + name, Ct), new MailSettings("a@b.example", Path.GetTempPath(), null), time, ct: Ct);

    private static IEnumerable<ICommand> Records()
    {
        var dock = new DockRecords(3);
        for (var b = 0; b < Boats; b++)
        {
            var boat = $"boat-{b}";
            foreach (var record in dock.Outfit(boat, $"Boat {b}")) yield return record;
            for (var i = 0; i < RecordsOfBoat - 5; i++)
            {
                var day = new DateOnly(2026, 2, 1).AddDays(3 * i);
                var at = $"{day:yyyy-MM-dd}T10:{b:D2}:00";
                yield return (i % 5) switch
                {
                    0 => dock.Trial(boat, at, 5500 + (i * 3) + b, 95 + (2 * i)),
                    1 => new ReportStrike(dock.At(at), boat, "single", "rock", i % 2 == 0 ? "scuffed" : "no_mark"),
                    2 => new Logbook.Inspections.Inspect(dock.At(at), boat, "single", "fit"),
                    3 => new ReadHours(dock.At(at), "e-" + boat, 95 + (2 * i)),
                    _ => new ReportStrike(dock.At(at), boat, "single", "wood", "chipped"),
                };
            }
        }
    }

    /// <summary>Sends through the batch endpoint, four phones at a time; returns how many records were taken for the first time.</summary>
    private static async Task<int> SendAsync(RunningFleet fleet, IEnumerable<string> records)
    {
        var phones = new List<DockPhone>();
        for (var i = 0; i < 4; i++) phones.Add(await DockPhone.EnrolledAsync(fleet));
        var (first, turn) = (0, 0);
        await Parallel.ForEachAsync(records.Chunk(BatchSize), new ParallelOptions { MaxDegreeOfParallelism = 4, CancellationToken = Ct }, async (batch, ct) =>
        {
            // A record keeps the name of the phone that sent it first; the state must not depend on that.
            var phone = phones[Interlocked.Increment(ref turn) % phones.Count];
            using var answer = await phone.PostAsync([.. batch.Select(r => JsonNode.Parse(r))]);
            answer.EnsureSuccessStatusCode();
            foreach (var result in JsonNode.Parse(await answer.Content.ReadAsStringAsync(ct))!["results"]!.AsArray())
            {
                Assert.Contains(result!["outcome"]!.GetValue<string>(), (string[])["recorded", "held"]);
                if (!result["repeat"]!.GetValue<bool>()) Interlocked.Increment(ref first);
            }
        });
        foreach (var phone in phones) phone.Dispose();
        return first;
    }

    private static async Task<SortedDictionary<string, string>> StateAsync(RunningFleet fleet)
    {
        var findings = await fleet.Service<FleetReading>().FindingsAsync(RunningFleet.Operator, Ct);
        return new(findings.ToDictionary(f => f.Boat, f => JsonSerializer.Serialize(f.Finding, LogbookJson.Options)), StringComparer.Ordinal);
    }
}
