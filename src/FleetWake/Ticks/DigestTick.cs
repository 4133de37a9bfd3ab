using FleetWake.Reports.Digests;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
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

/// <summary>Sets up the scheduler on its PostgreSQL store.</summary>
internal static class TickSetup
{
    public static void AddTicks(this IServiceCollection services, string database, TickSettings ticks)
    {
        services.AddQuartz(q =>
        {
            q.UsePersistentStore(store =>
            {
                store.UsePostgres(NpgsqlFactory.Instance, database);
                store.UseClustering(c =>
                {
                    // The defaults convict a healthy node after one hiccup of the database.
                    c.CheckinInterval = TimeSpan.FromSeconds(10);
                    c.CheckinMisfireThreshold = TimeSpan.FromSeconds(30);
                });
                store.ProvisionSchema();
            });
            q.ScheduleJob<DigestTick>(
                trigger => trigger.WithIdentity("digest").StartNow().WithSimpleSchedule(s => s.WithInterval(ticks.Digest).RepeatForever()),
                job => job.WithIdentity("digest"));
        });
        services.AddQuartzHostedService(o => o.WaitForJobsToComplete = true);
    }
}
