using FleetWake.Store.Fleet;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>
/// Asks whether a fleet is to be fitted. Only a tick: the row of looks decides who fits, and the version of the fleet's stream what is
/// recorded. It is a job of its own, for digests do not wait for fits: findings under the prior before are valid.
/// </summary>
[DisallowConcurrentExecution]
public sealed class FitTick(FleetFitStep fits) : IJob
{
    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
        await fits.FitDueAsync(cancellationToken);
}
