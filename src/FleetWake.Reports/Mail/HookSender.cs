using FleetWake.Store.Mail;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace FleetWake.Reports.Mail;

/// <summary>Hands alerts to the addresses that operators set, and tries again what was not taken.</summary>
public sealed partial class HookSender(AlertHooks hooks, HookPost post, TimeProvider time, ILogger<HookSender> log) : BackgroundService
{
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(2);
    private const int SideBySide = 3;

    /// <summary>Hands over one alert that is due; false when none is.</summary>
    public async Task<bool> SendOneAsync(CancellationToken ct)
    {
        if (await hooks.ClaimAsync(ct) is not { } hook) return false;
        switch (await TryAsync(hook, ct))
        {
            case Delivery.Sent:
                await hooks.SentAsync(hook, CancellationToken.None);
                break;
            case Delivery.Refused refused:
                LogNotTaken(hook.Alert, hook.Operator, refused.Why);
                await hooks.RefusedAsync(hook, refused.Why, CancellationToken.None);
                break;
            case Delivery.Deferred deferred:
                await hooks.DeferredAsync(hook, deferred.Why, CancellationToken.None);
                break;
        }

        return true;
    }

    private async Task<Delivery> TryAsync(ClaimedHook hook, CancellationToken ct)
    {
        try
        {
            return await post.SendAsync(hook, ct);
        }
        catch (Exception e) when (!ct.IsCancellationRequested)
        {
            // Whatever it is, it is this alert's: it waits like any other that was not taken, and is given up in its time.
            return new Delivery.Deferred(Redaction.Of(e.Message));
        }
    }

    /// <inheritdoc/>
    protected override Task ExecuteAsync(CancellationToken stoppingToken) => Task.WhenAll(Enumerable.Range(0, SideBySide).Select(_ => GoOnAsync(stoppingToken)));

    private async Task GoOnAsync(CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            try
            {
                if (await SendOneAsync(stop)) continue;
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                // Whatever it is, stopping here would leave all alerts unsent and nobody would notice.
                LogWaiting(e);
            }

            await Task.Delay(Idle, time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Alert {Alert} of {Operator} was not taken by its address: {Why}")]
    private partial void LogNotTaken(string alert, string @operator, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Alerts to addresses wait: the database does not answer or an attempt broke.")]
    private partial void LogWaiting(Exception e);
}
