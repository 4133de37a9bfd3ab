using FleetWake.Reports.Digests.Issue;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>
/// Asks whether a digest is due. Only a tick: whatever the scheduler does, twice or late, the unique key
/// (operator, digest, dock, period) decides what goes out.
/// </summary>
[DisallowConcurrentExecution]
public sealed class DigestTick(DigestIssue issue) : IJob
{
    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
        await issue.IssueDueAsync(cancellationToken);
}
