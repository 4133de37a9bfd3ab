using FleetWake.Reports.Digests.Alert;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>Asks whether something is to be told by alert. Only a tick: each cause has a key, and its uniqueness decides that it is told once.</summary>
[DisallowConcurrentExecution]
public sealed class AlertTick(AlertIssue alerts) : IJob
{
    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
        await alerts.TellDueAsync(cancellationToken);
}
