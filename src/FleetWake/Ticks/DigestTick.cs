using FleetWake.Reports.Digests;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>How often ticks come.</summary>
/// <param name="Digest">Interval of the digest tick.</param>
public sealed record TickSettings(TimeSpan Digest)
{
    /// <summary>In service.</summary>
    public static TickSettings Usual { get; } = new(TimeSpan.FromMinutes(1));
}

/// <summary>
/// Asks whether a digest is due. Only a tick: whatever the scheduler does, twice or late, the unique key
/// (operator, digest, period) decides what goes out.
/// </summary>
[DisallowConcurrentExecution]
public sealed class DigestTick(WeeklyWearIssue issue) : IJob
{
    /// <inheritdoc/>
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) =>
        await issue.IssueDueAsync(cancellationToken);
}
