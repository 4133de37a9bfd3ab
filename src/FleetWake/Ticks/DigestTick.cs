using FleetWake.Reports.Digests.Issue;
using FleetWake.Store.Mail;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>
/// Asks whether a digest is due. Only a tick: whatever the scheduler does, twice or late, the unique key
/// (operator, digest, dock, period) decides what goes out.
/// </summary>
[DisallowConcurrentExecution]
public sealed class DigestTick(DigestIssue issue, MailHolds holds) : IJob
{
    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken)
    {
        if (await holds.SinceAsync(cancellationToken) is null) await issue.IssueDueAsync(cancellationToken);
    }
}
