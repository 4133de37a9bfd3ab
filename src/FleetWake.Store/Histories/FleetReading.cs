using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Store.Findings;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.Histories;

/// <summary>What people and reports read of an operator's fleet.</summary>
public sealed partial class FleetReading(IDocumentStore store, NpgsqlDataSource source)
{
    /// <summary>A boat's log as the daemon folded it; null when nothing of it has arrived.</summary>
    public async Task<FactLog?> LogAsync(string @operator, string boat, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.LoadAsync<FactLog>(StreamName.Boat(boat), ct);
    }

    /// <summary>The operator's own log, as the daemon folded it.</summary>
    public async Task<FactLog> OfficeLogAsync(string @operator, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        return await session.LoadAsync<FactLog>(StreamName.Operator, ct) ?? FactLog.Empty(StreamName.Operator);
    }

    /// <summary>
    /// Findings of every boat as they would have been at the end of a day: from the record as it is known now,
    /// leaving out what happened after that day in the zone of each record. They lean on the fleet prior that was the newest
    /// at the end of that day in the operator's zone; of days before the first fit, on the first one: what the fleet showed
    /// somewhat later says more of it than what the trade expects of any.
    /// </summary>
    public async Task<IReadOnlyList<BoatFinding>> FindingsOnAsync(string @operator, DateOnly day, CancellationToken ct)
    {
        await using var session = store.QuerySession(@operator);
        var boats = await session.Query<CurrentFinding>().Select(c => c.Id).ToListAsync(ct);
        var findings = new List<BoatFinding>();
        var priors = await PriorsOfDayAsync(@operator, day, ct);
        foreach (var boat in boats)
        {
            var finding = Assess.Boat(await Dossiers.LoadAsync(session, boat, ct) with { Until = day }, priors);
            if (finding.Registered is not null || finding.Held > 0) findings.Add(finding);
        }

        return [.. findings.OrderBy(f => f.DisplayName(), StringComparer.OrdinalIgnoreCase).ThenBy(f => f.Boat, StringComparer.Ordinal)];
    }

    /// <summary>Boats whose finding is not up to date: waiting, and parked because they could not be assessed.</summary>
    public async Task<Backlog> BacklogAsync(CancellationToken ct)
    {
        await using var command = source.CreateCommand(
            "select operator, boat, parked_at is not null, coalesce(last_error, '') from " + WorkTables.DirtyBoats + " order by 1, 2");
        await using var reader = await command.ExecuteReaderAsync(ct);
        var waiting = 0;
        var parked = new List<ParkedBoat>();
        while (await reader.ReadAsync(ct))
        {
            if (reader.GetBoolean(2)) parked.Add(new ParkedBoat(reader.GetString(0), reader.GetString(1), reader.GetString(3)));
            else waiting++;
        }

        return new Backlog(waiting, parked);
    }
}

/// <summary>Boats whose finding is not up to date.</summary>
/// <param name="Waiting">How many wait their turn.</param>
/// <param name="Parked">Those that could not be assessed.</param>
public sealed record Backlog(int Waiting, IReadOnlyList<ParkedBoat> Parked);

/// <summary>A boat that could not be assessed.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Error">What went wrong the last time.</param>
public sealed record ParkedBoat(string Operator, string Boat, string Error);
