using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>Sets up the scheduler on its PostgreSQL store.</summary>
internal static class TickSetup
{
    // The scheduler names its tables itself, and keeps them outside the record's schema.
    private const string Table = "qrtz_job_details";
    private const string Digest = "digest";
    private const string Fit = "fit";
    private const string Alert = "alert";

    /// <summary>The triggers, each with its interval.</summary>
    public static IReadOnlyList<(TriggerKey Trigger, TimeSpan Interval)> Triggers(TickSettings ticks) => [(new(Digest), ticks.Digest), (new(Fit), ticks.Fit), (new(Alert), ticks.Alert)];

    public static void AddTicks(this IServiceCollection services, string database, string node, TickSettings ticks)
    {
        services.AddQuartz(q =>
        {
            // Two schedulers of one id would take each other's ticks for their own.
            q.ConfigureScheduler(o => o.InstanceId = node);
            q.UseFleetStore(database);
            q.ScheduleJob<DigestTick>(trigger => trigger.WithIdentity(Digest).StartNow().WithSimpleSchedule(s => Every(s, ticks.Digest)), job => job.WithIdentity(Digest));
            q.ScheduleJob<FitTick>(trigger => trigger.WithIdentity(Fit).StartNow().WithSimpleSchedule(s => Every(s, ticks.Fit)), job => job.WithIdentity(Fit));
            q.ScheduleJob<AlertTick>(trigger => trigger.WithIdentity(Alert).StartNow().WithSimpleSchedule(s => Every(s, ticks.Alert)), job => job.WithIdentity(Alert));
        });
        services.AddQuartzHostedService(o => o.WaitForJobsToComplete = true);
        services.AddSingleton(ticks);
        services.AddHostedService<TickGuard>();
    }

    /// <summary>The schedule: at its interval, and after an outage once, at once, for what was missed is the business of whom it asks.</summary>
    public static void Every(SimpleScheduleBuilder schedule, TimeSpan interval) => schedule
        .WithInterval(interval)
        .RepeatForever()
        .WithMisfireInstruction(SimpleTriggerMisfireInstruction.NowWithExistingCount);

    /// <summary>Makes the scheduler's tables where they are missing, and starts nothing. Many may call it at once.</summary>
    public static async Task ProvisionAsync(string database, CancellationToken ct)
    {
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddQuartz(q => q.UseFleetStore(database));
        await using var provider = services.BuildServiceProvider();
        var scheduler = await provider.GetRequiredService<ISchedulerFactory>().GetScheduler(ct);
        await scheduler.Shutdown(waitForJobsToComplete: false, ct);
    }

    /// <summary>Whether the scheduler's tables are there.</summary>
    public static async Task<bool> IsProvisionedAsync(NpgsqlDataSource source, CancellationToken ct)
    {
        await using var command = source.CreateCommand("select to_regclass($1) is not null");
        command.Parameters.Add(new NpgsqlParameter { Value = Table });
        return (bool)(await command.ExecuteScalarAsync(ct))!;
    }

    /// <summary>How late the next digest tick is; null when there has never been one. A fit may take its time.</summary>
    public static async Task<TimeSpan?> LateAsync(NpgsqlDataSource source, CancellationToken ct)
    {
        await using var command = source.CreateCommand("select min(next_fire_time) from qrtz_triggers where trigger_name = $1");
        command.Parameters.Add(new NpgsqlParameter { Value = Digest });
        if (await command.ExecuteScalarAsync(ct) is not long next) return null;
        var late = TimeProvider.System.GetUtcNow() - new DateTimeOffset(next, TimeSpan.Zero);
        return late < TimeSpan.Zero ? TimeSpan.Zero : late;
    }

    private static void UseFleetStore(this IQuartzBuilder q, string database) => q.UsePersistentStore(store =>
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
}
