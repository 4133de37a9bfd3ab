using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using Quartz;

namespace FleetWake.Ticks;

/// <summary>
/// Sees to it that the ticks come. The scheduler keeps the moment of the next one by the time of day: after a clock that ran
/// ahead and was set back, that moment lies in the far future, and nothing would be issued until then; and one that the
/// clock jumped over may never be taken up again. This looks by a clock that does not jump, and sets a tick that stands far
/// from now, or that the scheduler gave up, to now.
/// </summary>
internal sealed partial class TickGuard(ISchedulerFactory schedulers, TickSettings ticks, TimeProvider time, ILogger<TickGuard> log) : BackgroundService
{
    private readonly IReadOnlyList<(TriggerKey Trigger, TimeSpan Interval)> triggers = TickSetup.Triggers(ticks);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            await Task.Delay(triggers.Min(t => t.Interval) * 2, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
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
        foreach (var (trigger, interval) in triggers)
        {
            var tick = await scheduler.GetTrigger(trigger, ct);
            var next = tick?.NextFireTimeUtc;
            var state = await scheduler.GetTriggerState(trigger, ct);
            if (tick is null || IsNear(next - time.GetUtcNow(), state, interval * 2)) continue;
            LogSet(trigger.Name, next, state);
            var again = TriggerBuilder.Create(time).WithIdentity(trigger).ForJob(tick.JobKey).StartNow().WithSimpleSchedule(s => TickSetup.Every(s, interval)).Build();
            await scheduler.RescheduleJob(trigger, again, ct);
        }
    }

    /// <summary>While it is at work, the next one may well be overdue.</summary>
    private static bool IsNear(TimeSpan? untilNext, TriggerState state, TimeSpan patience) =>
        state != TriggerState.Error && untilNext <= patience && (untilNext >= -patience || state == TriggerState.Executing);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The next {Tick} tick stood at {Next} ({State}): it is set to now. Was the clock set?")]
    private partial void LogSet(string tick, DateTimeOffset? next, TriggerState state);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Whether the ticks come could not be seen this time.")]
    private partial void LogUnseen(Exception e);
}
