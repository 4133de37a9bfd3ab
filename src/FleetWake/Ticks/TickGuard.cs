using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>
/// Sees to it that the tick comes. The scheduler keeps the moment of the next one by the time of day: after a clock that ran
/// ahead and was set back, that moment lies in the far future, and nothing would be issued until then. This looks by a clock
/// that does not jump, and sets such a tick, or one that the scheduler gave up, to now.
/// </summary>
internal sealed partial class TickGuard(ISchedulerFactory schedulers, TickSettings ticks, TimeProvider time, ILogger<TickGuard> log) : BackgroundService
{
    private readonly TimeSpan patience = ticks.Digest * 2;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            await Task.Delay(patience, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            try
            {
                if (!stoppingToken.IsCancellationRequested) await LookAsync(stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                // The scheduler or its database is away: the next look is soon enough.
                LogUnseen(e);
            }
        }
    }

    private async Task LookAsync(CancellationToken ct)
    {
        var scheduler = await schedulers.GetScheduler(ct);
        var tick = await scheduler.GetTrigger(TickSetup.Trigger, ct);
        var next = tick?.NextFireTimeUtc;
        var state = await scheduler.GetTriggerState(TickSetup.Trigger, ct);
        if (tick is null || (state != TriggerState.Error && next - time.GetUtcNow() <= patience)) return;
        LogSet(next, state);
        var again = TriggerBuilder.Create(time).WithIdentity(TickSetup.Trigger).ForJob(tick.JobKey).StartNow().WithSimpleSchedule(s => TickSetup.Every(s, ticks)).Build();
        await scheduler.RescheduleJob(TickSetup.Trigger, again, ct);
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The next digest tick stood at {Next} ({State}): it is set to now. Was the clock set back?")]
    private partial void LogSet(DateTimeOffset? next, TriggerState state);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Whether the digest tick comes could not be seen this time.")]
    private partial void LogUnseen(Exception e);
}
