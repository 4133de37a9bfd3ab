using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using Marten;

namespace FleetWake.Store.Fleet;

/// <summary>The histories of a whole fleet, in pages. A boat that cannot be told is left out: it must not keep the others from their fit.</summary>
internal sealed class FleetHistories
{
    /// <summary>Boats whose logs are in memory at once.</summary>
    private const int Page = 50;

    private readonly List<BoatHistory> told = [];
    private readonly List<(string Boat, Exception Why)> leftOut = [];

    /// <summary>The histories.</summary>
    public IReadOnlyList<BoatHistory> Told => told;

    /// <summary>Boats that were left out.</summary>
    public IReadOnlyList<(string Boat, Exception Why)> LeftOut => leftOut;

    /// <summary>Reads an operator's fleet.</summary>
    public static async Task<FleetHistories> ReadAsync(IDocumentStore store, string @operator, IEnumerable<string> boats, CancellationToken ct)
    {
        var fleet = new FleetHistories();
        foreach (var page in boats.Chunk(Page))
        {
            await using var session = store.QuerySession(@operator);
            if (await fleet.TryAsync(session, page, ct) is null) continue;
            // One log of the page cannot be read: which one is seen when each is read by itself.
            foreach (var boat in page)
            {
                if (await fleet.TryAsync(session, [boat], ct) is { } why) fleet.leftOut.Add((boat, why));
            }
        }

        return fleet;
    }

    /// <summary>Leaves out those boats that cannot be assessed by themselves; false when each can.</summary>
    public bool LeaveOutUnassessable()
    {
        var before = told.Count;
        told.RemoveAll(history =>
        {
            try
            {
                _ = EveryMounting.Of(history).Count();
                _ = KnownChanges.Of(history).Count();
                return false;
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                leftOut.Add((history.Boat, e));
                return true;
            }
        });
        return told.Count < before;
    }

    private async Task<Exception?> TryAsync(IQuerySession session, IReadOnlyList<string> boats, CancellationToken ct)
    {
        IReadOnlyList<Dossier> dossiers;
        try
        {
            dossiers = await Dossiers.FoldedAsync(session, boats, ct);
        }
        catch (Exception e) when (e is not OperationCanceledException && !FindingStep.IsDatabaseDown(e))
        {
            return e;
        }

        foreach (var dossier in dossiers)
        {
            try
            {
                told.Add(BoatHistory.Tell(dossier));
            }
            catch (Exception e) when (e is not OutOfMemoryException)
            {
                leftOut.Add((dossier.BoatId, e));
            }
        }

        return null;
    }
}
