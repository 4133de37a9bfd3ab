using FleetWake.Logbook.Entries;
using Marten;

namespace FleetWake.Store.Records;

/// <summary>Which boats, engines and props are registered: what a record names and is not, holds it.</summary>
internal static class Registrations
{
    // Enough of a stream to tell: a registration is amended by one of its own kind and taken back by a retraction.
    private static readonly string[] Telling =
        [.. LogbookJson.StoredNames.Where(n => n.Key.IsAssignableTo(typeof(IRegistration)) || n.Key == typeof(Retracted)).Select(n => n.Value)];

    /// <summary>Those of some streams whose thing is registered now.</summary>
    public static async Task<HashSet<string>> AmongAsync(IQuerySession session, IEnumerable<string> streams, CancellationToken ct)
    {
        var asked = streams.Distinct(StringComparer.Ordinal).ToArray();
        if (asked.Length == 0) return [];
        var events = await session.Events.QueryAllRawEvents()
            .Where(e => e.StreamKey!.IsOneOf(asked) && e.EventTypeName.IsOneOf(Telling)).OrderBy(e => e.Sequence).ToListAsync(ct);
        return events.GroupBy(e => e.StreamKey!, StringComparer.Ordinal)
            .Where(g => g.Select(e => e.Data).OfType<IFact>().Aggregate(FactLog.Empty(g.Key), (log, fact) => log.Evolve(fact)).Registration() is not null)
            .Select(g => g.Key)
            .ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>The references that hold a record, each with its field.</summary>
    public static List<Refusal> Holding(IReadOnlyList<Reference> references, Func<string, bool> registered) =>
    [
        .. references.Where(r => !registered(r.Stream)).Select(r => new Refusal(
            r.Field, "not_registered", $"{r.Stream.Replace("/", " ", StringComparison.Ordinal)} is not registered yet: the record is held until its registration arrives")),
    ];
}
