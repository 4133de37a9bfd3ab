using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FleetWake.Store.Findings;

/// <summary>Assesses dirty boats as they come, and outlasts a database that goes away.</summary>
public sealed partial class FindingWorker(FindingStep step, TimeProvider time, ILogger<FindingWorker> log) : BackgroundService
{
    private static readonly TimeSpan Idle = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan LongestWait = TimeSpan.FromSeconds(10);

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var wait = Idle;
        var startedOver = false;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (!startedOver)
                {
                    await step.StartOverAsync(stoppingToken);
                    startedOver = true;
                }

                if (await step.TakeOneAsync(stoppingToken))
                {
                    wait = Idle;
                    continue;
                }

                await Task.Delay(Idle, time, stoppingToken);
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                // Whatever it is, stopping here would leave every boat without a finding and nobody would notice.
                LogWaiting(e, wait.TotalSeconds);
                await Task.Delay(wait, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
                wait = wait * 2 > LongestWait ? LongestWait : wait * 2;
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The finding step waits {Seconds:0.0} s: the database does not answer or the step failed.")]
    private partial void LogWaiting(Exception e, double seconds);
}
