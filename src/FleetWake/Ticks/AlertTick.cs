using FleetWake.Reports.Digests.Alert;
using FleetWake.Store.Mail;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>Asks whether something is to be told by alert. Only a tick: each cause has a key, and its uniqueness decides that it is told once.</summary>
[DisallowConcurrentExecution]
public sealed class AlertTick(AlertIssue alerts, MailHolds holds) : IJob
{
    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken)
    {
        if (await holds.SinceAsync(cancellationToken) is null) await alerts.TellDueAsync(cancellationToken);
    }
}
