using FleetWake.Store.Mail;
using FleetWake.Store.Nodes;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FleetWake.Store.Telemetry;

/// <summary>
/// Measures how the work stands every now and then. Each work node does, and all measure the same: take the latest or the
/// largest of them, never the sum.
/// </summary>
public sealed partial class WorkStateGauges(WorkStateReading reading, TimeProvider time, ILogger<WorkStateGauges> log) : BackgroundService
{
    /// <summary>Between two measurements.</summary>
    public static readonly TimeSpan Interval = TimeSpan.FromSeconds(15);

    /// <summary>Records one measurement.</summary>
    public static void Record(WorkState now)
    {
        FleetMeter.BoatsWaiting.Record(now.Waiting);
        FleetMeter.OldestWait.Record(now.OldestWait.TotalSeconds);
        FleetMeter.BoatsParked.Record(now.Parked);
        FleetMeter.EventsBehind.Record(now.EventsBehind);
        FleetMeter.DaemonLag.Record(now.DaemonLag.TotalSeconds);
        FleetMeter.Nodes.Record(now.Nodes.Count(n => !n.IsSilent), FleetMeter.State("alive"));
        FleetMeter.Nodes.Record(now.Nodes.Count(n => n.IsSilent), FleetMeter.State("silent"));

        // A state that nobody stands in any more must fall to zero, not keep its last figure.
        foreach (var state in MailState.All) FleetMeter.Mails.Record(now.Mails.GetValueOrDefault(state), FleetMeter.State(state));
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                Record(await reading.NowAsync(stoppingToken));
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                LogUnmeasured(e);
            }

            await Task.Delay(Interval, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "How the work stands could not be measured this time.")]
    private partial void LogUnmeasured(Exception e);
}
