using FleetWake.Logbook.Entries;
using FleetWake.Store.Schema;
using JasperFx.Events.Daemon;
using JasperFx.Events.Projections;
using Marten;
using Marten.Services;
using Marten.Subscriptions;

namespace FleetWake.Store.Findings;

/// <summary>
/// Marks boats whose finding may have changed; nothing more. It writes in the transaction of the daemon's progress,
/// so no event is passed without its mark. Alarms and mail are left out: a finding raises them, so there would be a loop.
/// </summary>
public sealed class DirtyBoatSubscription : SubscriptionBase
{
    private const string Upsert =
        " on conflict (operator, boat) do update set sequence = greatest(excluded.sequence, dirty_boats.sequence),"
        + " attempts = 0, not_before = null, parked_at = null, last_error = null";

    /// <summary>Notices on an engine's or prop's stream: the index from it to boats.</summary>
    internal const string PartNotices = "('prop_issued', 'prop_found', 'prop_returned', 'engine_installed', 'engine_taken_off')";

    private const string MarkBoat =
        "insert into " + WorkTables.DirtyBoats + " (operator, boat, sequence, marked_at, attempts) values (?, ?, ?, now(), 0)" + Upsert;

    private const string MarkBoatsOfPart =
        "insert into " + WorkTables.DirtyBoats + " (operator, boat, sequence, marked_at, attempts)"
        + " select distinct e.tenant_id, e.data ->> 'boat', ?::bigint, now(), 0 from " + FleetStore.SchemaName + ".mt_events e"
        + " where e.tenant_id = ? and e.stream_id = ? and e.type in " + PartNotices + Upsert;

    // Nearly every record of one boat can bear on another that shares a prop or an engine: hours, spans, questions.
    private const string MarkNeighbours =
        "insert into " + WorkTables.DirtyBoats + " (operator, boat, sequence, marked_at, attempts)"
        + " select distinct n.tenant_id, n.data ->> 'boat', ?::bigint, now(), 0"
        + " from " + FleetStore.SchemaName + ".mt_events e join " + FleetStore.SchemaName + ".mt_events n on n.tenant_id = e.tenant_id"
        + " and n.stream_id in ('prop/' || (e.data ->> 'prop'), 'engine/' || (e.data ->> 'engine'))"
        + " and n.type in ('prop_issued', 'prop_found', 'engine_installed')"
        + " where e.tenant_id = ? and e.stream_id = ? and e.type in ('prop_mounted', 'found_fitted', 'engine_fitted')" + Upsert;

    // An engine that left another boat ended the mountings there, and so bears on every boat that one of those props is on now.
    // It begins at the engines: those of a boat (first arm), or the one whose stream it is.
    private const string MarkBeyond =
        "insert into " + WorkTables.DirtyBoats + " (operator, boat, sequence, marked_at, attempts)"
        + " select distinct k.tenant_id, k.data ->> 'boat', ?::bigint, now(), 0"
        + " from (select i.tenant_id, i.data ->> 'boat' as boat from " + FleetStore.SchemaName + ".mt_events i"
        + " where i.tenant_id = ? and i.type = 'engine_installed' and i.stream_id in (select 'engine/' || (e.data ->> 'engine')"
        + " from " + FleetStore.SchemaName + ".mt_events e where e.tenant_id = ? and e.stream_id = ? and e.type in ('engine_fitted', 'engine_installed'))) b"
        + " join " + FleetStore.SchemaName + ".mt_events m on m.tenant_id = b.tenant_id and m.stream_id = 'boat/' || b.boat"
        + " and m.type in ('prop_mounted', 'found_fitted', 'engine_fitted')"
        + " join " + FleetStore.SchemaName + ".mt_events k on k.tenant_id = m.tenant_id"
        + " and k.stream_id in ('prop/' || (m.data ->> 'prop'), 'engine/' || (m.data ->> 'engine'))"
        + " and k.type in ('prop_issued', 'prop_found', 'engine_installed')"
        + " where b.boat is distinct from ?" + Upsert;

    // Every finding of a fleet leans on what the fleet has shown.
    private const string MarkFleet =
        "insert into " + WorkTables.DirtyBoats + " (operator, boat, sequence, marked_at, attempts)"
        + " select tenant_id, substr(id, length('boat/') + 1), ?::bigint, now(), 0 from " + FleetStore.SchemaName + ".mt_streams"
        + " where tenant_id = ? and id like 'boat/%'" + Upsert;

    /// <summary>Names the subscription; its progress is kept under this name.</summary>
    public DirtyBoatSubscription() => Name = "dirty-boats";

    /// <inheritdoc/>
    public override Task<IChangeListener> ProcessEventsAsync(
        EventRange page, ISubscriptionController controller, IDocumentOperations operations, CancellationToken cancellationToken)
    {
        var streams = page.Events.Where(e => e.StreamKey is not null)
            .GroupBy(e => (e.TenantId, Stream: e.StreamKey!))
            .OrderBy(g => g.Key.TenantId, StringComparer.Ordinal).ThenBy(g => g.Key.Stream, StringComparer.Ordinal);
        foreach (var events in streams)
        {
            var (tenant, stream) = events.Key;
            var newest = events.Max(e => e.Sequence);
            if (StreamName.BoatOf(stream) is { } boat)
            {
                operations.QueueSqlCommand(MarkBoat, tenant, boat, newest);
                operations.QueueSqlCommand(MarkNeighbours, newest, tenant, stream);
                operations.QueueSqlCommand(MarkBeyond, newest, tenant, tenant, stream, boat);
            }
            else if (StreamName.PropOf(stream) is not null || StreamName.EngineOf(stream) is not null)
            {
                operations.QueueSqlCommand(MarkBoatsOfPart, newest, tenant, stream);
                if (StreamName.EngineOf(stream) is not null) operations.QueueSqlCommand(MarkBeyond, newest, tenant, tenant, stream, "");
            }
            else if (stream == StreamName.Fleet)
            {
                operations.QueueSqlCommand(MarkFleet, newest, tenant);
            }
        }

        return Task.FromResult(NullChangeListener.Instance);
    }
}
