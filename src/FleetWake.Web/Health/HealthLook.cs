using FleetWake.Store.Nodes;
using Npgsql;

namespace FleetWake.Web.Health;

/// <summary>
/// The look behind the probes. Anybody may ask, any number of times: one look at a time goes to the database, it is broken
/// off when it takes too long, and its answer holds for a few seconds.
/// </summary>
public sealed class HealthLook(WorkStateReading state, NodeSettings node, TimeProvider time)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Holds = TimeSpan.FromSeconds(2);

    private readonly Lock gate = new();
    private Task<HealthAnswer>? last;
    private long begun;

    /// <summary>How the program stands, as of a few seconds ago at most.</summary>
    public Task<HealthAnswer> NowAsync(CancellationToken ct)
    {
        lock (gate)
        {
            if (last is null || (last.IsCompleted && time.GetElapsedTime(begun) > Holds)) (begun, last) = (time.GetTimestamp(), Task.Run(LookAsync, CancellationToken.None));
            return last.WaitAsync(ct);
        }
    }

    private async Task<HealthAnswer> LookAsync()
    {
        using var patience = new CancellationTokenSource(Patience, time);
        try
        {
            var complaints = (await state.NowAsync(patience.Token)).Complaints();
            return new HealthAnswer(complaints.Count == 0 ? HealthStatus.Ready : HealthStatus.Degraded, node.Node.Value, node.Roles, node.Version, complaints);
        }
        catch (PostgresException e) when (e.SqlState is PostgresErrorCodes.UndefinedTable or PostgresErrorCodes.InvalidSchemaName or PostgresErrorCodes.UndefinedColumn)
        {
            return NotReady("schema", "the database does not have this version's tables: run \"fleetwake schema\"");
        }
        catch (Exception e) when (e is NpgsqlException or TimeoutException or OperationCanceledException)
        {
            return NotReady("database", "the database does not answer");
        }
    }

    private HealthAnswer NotReady(string part, string says) => new(HealthStatus.NotReady, node.Node.Value, node.Roles, node.Version, [new Complaint(part, says)]);
}
