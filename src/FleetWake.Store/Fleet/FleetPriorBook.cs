using System.Collections.Concurrent;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet;
using Marten;

namespace FleetWake.Store.Fleet;

/// <summary>
/// What fleets have shown, read from their streams. A fit's number is its version in the stream <see cref="StreamName.Fleet"/>, so
/// that the newest is found without reading it. The newest of a few operators is kept as read: each is some hundred kilobytes,
/// and every boat of a fleet asks for it.
/// </summary>
internal sealed class FleetPriorBook
{
    private const int MostKept = 64;

    private readonly ConcurrentDictionary<string, FleetPriors> kept = new(StringComparer.Ordinal);

    /// <summary>The newest priors of the session's operator, as the session's transaction sees them; the trade's before the first fit.</summary>
    public async Task<FleetPriors> NewestAsync(IQuerySession session, CancellationToken ct)
    {
        var number = await NewestNumberAsync(session, ct);
        if (number == 0) return FleetPriors.Trade;
        if (kept.TryGetValue(session.TenantId, out var known) && known.Number == number) return known;
        var priors = FleetPriors.Of(await FittedAsync(session, number, ct));
        if (kept.Count >= MostKept) kept.Clear();
        return kept[session.TenantId] = priors;
    }

    /// <summary>The number of the newest fit of the session's operator; 0 before the first.</summary>
    public static async Task<int> NewestNumberAsync(IQuerySession session, CancellationToken ct) =>
        (int)((await session.Events.FetchStreamStateAsync(StreamName.Fleet, ct))?.Version ?? 0);

    /// <summary>A fit by its number; null when there is none.</summary>
    public static async Task<FleetPriorFitted?> FittedAsync(IQuerySession session, int number, CancellationToken ct)
    {
        // The library takes a version of 0 for the newest.
        if (number <= 0) return null;
        var events = await session.Events.FetchStreamAsync(StreamName.Fleet, version: number, fromVersion: number, token: ct);
        return events is [{ Data: FleetPriorFitted fitted }] ? fitted : null;
    }

    /// <summary>The newest fit of the session's operator; null before the first.</summary>
    public static async Task<FleetPriorFitted?> NewestFittedAsync(IQuerySession session, CancellationToken ct) =>
        await FittedAsync(session, await NewestNumberAsync(session, ct), ct);
}
