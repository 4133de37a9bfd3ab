using System.Collections.Concurrent;
using FleetWake.Demo;
using FleetWake.Logbook.Entries;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>Invented records held against the rules that the server holds them against.</summary>
public static class DecidedRecords
{
    private static readonly ConcurrentDictionary<InventedRecord, IReadOnlyList<Placed>> Known = new();

    public static Decision Decide(ICommand record, DeviceBatch batch) =>
        RecordKind.Find(BatchJson.Kind(record))!.Decide(record, batch.Arrival());

    /// <summary>The facts of all batches, in the order in which they were taken; a repeat is not counted.</summary>
    public static IReadOnlyList<Placed> Facts(InventedRecord record) => Known.GetOrAdd(record, Read);

    /// <summary>What counts on one stream.</summary>
    public static IReadOnlyList<T> Counting<T>(InventedRecord record, string stream)
        where T : IFact =>
        [.. Effective.Of([.. Facts(record).Where(p => p.Stream == stream).Select(p => p.Fact)]).Facts.OfType<T>()];

    /// <summary>Everything as it goes over the wire.</summary>
    public static string Json(InventedRecord record) =>
        string.Join('\n', record.Batches.Select(b => BatchJson.Write(b).ToJsonString())
            .Concat(record.Refusable.Select(r => BatchJson.Write(r.Batch).ToJsonString())));

    private static IReadOnlyList<Placed> Read(InventedRecord record) =>
    [
        .. record.Batches
            .SelectMany(b => b.Records.Select(r => (Id: r.Entry!.Id, Decision: Decide(r, b))))
            .DistinctBy(x => x.Id)
            .SelectMany(x => Assert.IsType<Decision.Keep>(x.Decision).Facts),
    ];
}
