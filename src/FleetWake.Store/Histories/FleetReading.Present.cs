using System.Collections.Concurrent;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Schedules;
using FleetWake.Store.Findings;
using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Store.Histories;

/// <content>What stands now: the present findings, and the policy they are held against. Both are kept between readings.</content>
public sealed partial class FleetReading
{
    // Of a thousand boats a thousand short rows, rather than their findings.
    private const string CurrentOfAll =
        "select id, data ->> 'findingId' from " + FleetStore.SchemaName + ".mt_doc_current_finding where tenant_id = $1";

    private const string CurrentOfSome = CurrentOfAll + " and id = any($2)";

    private const string OfficeLogVersion =
        "select mt_version::text from " + FleetStore.SchemaName + ".mt_doc_fact_log where tenant_id = $1 and id = $2";

    private readonly FindingCache findings = new();
    private readonly ConcurrentDictionary<string, (string Version, OfficeState State)> offices = new(StringComparer.Ordinal);

    /// <summary>The present finding of every boat, by name.</summary>
    public async Task<IReadOnlyList<StoredFinding>> FindingsAsync(string @operator, CancellationToken ct)
    {
        var present = await PresentAsync(@operator, null, ct);
        return [.. present.OrderBy(f => f.Finding.DisplayName(), StringComparer.OrdinalIgnoreCase).ThenBy(f => f.Boat, StringComparer.Ordinal)];
    }

    /// <summary>The present findings of some boats, those left out that have none.</summary>
    public Task<IReadOnlyList<StoredFinding>> FindingsAsync(string @operator, IEnumerable<string> boats, CancellationToken ct) =>
        PresentAsync(@operator, [.. boats], ct);

    /// <summary>The present finding of a boat; null when the boat is unknown or not assessed yet.</summary>
    public async Task<StoredFinding?> FindingAsync(string @operator, string boat, CancellationToken ct) =>
        (await PresentAsync(@operator, [boat], ct)).SingleOrDefault();

    /// <summary>What an operator has settled for its fleet.</summary>
    public async Task<FleetPolicy> PolicyAsync(string @operator, CancellationToken ct) => (await OfficeAsync(@operator, ct)).Policy;

    /// <summary>What the operator's own log tells. The same object as long as nothing is told there, so that what was worked out by it can be kept too.</summary>
    public async Task<OfficeState> OfficeAsync(string @operator, CancellationToken ct)
    {
        if ((await source.ReadAsync(OfficeLogVersion, r => r.GetString(0), ct, @operator, StreamName.Operator)).FirstOrDefault() is not { } version) return OfficeState.Unopened;
        if (offices.TryGetValue(@operator, out var known) && known.Version == version) return known.State;

        // The log may have grown since: then it is read once more the next time, and never is an old state kept under a new version.
        var log = await OfficeLogAsync(@operator, ct);
        var state = new OfficeState(FleetPolicy.Of(log), OfficeRecord.Of(log)) { Schedules = ScheduleBook.Of(log) };
        offices[@operator] = (version, state);
        return state;
    }

    private async Task<IReadOnlyList<StoredFinding>> PresentAsync(string @operator, string[]? boats, CancellationToken ct)
    {
        var ids = boats is null
            ? await source.ReadAsync(CurrentOfAll, r => r.GetString(1), ct, @operator)
            : await source.ReadAsync(CurrentOfSome, r => r.GetString(1), ct, @operator, boats);
        return await findings.OfAsync(@operator, ids, async missing =>
        {
            await using var session = store.QuerySession(@operator);
            return await session.LoadManyAsync<StoredFinding>(ct, [.. missing]);
        });
    }
}

/// <summary>What an operator's own log tells, as read once.</summary>
/// <param name="Policy">What it has settled for its fleet.</param>
/// <param name="Record">Its docks, people, devices, schedules and prices.</param>
public sealed record OfficeState(FleetPolicy Policy, OfficeRecord Record)
{
    /// <summary>Of an operator of whom nothing was folded yet.</summary>
    public static OfficeState Unopened { get; } = new(FleetPolicy.Usual, OfficeRecord.Of(FactLog.Empty(StreamName.Operator)));

    /// <summary>When digests go out.</summary>
    public ScheduleBook Schedules { get; init; } = ScheduleBook.Of(FactLog.Empty(StreamName.Operator));

    /// <summary>The name of a dock; its id while nobody named it.</summary>
    public string DockName(string dock) => Record.Docks.FirstOrDefault(d => d.Dock == dock)?.Name ?? dock;
}
