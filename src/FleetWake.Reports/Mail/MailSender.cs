using FleetWake.Store.Mail;
using FleetWake.Store.Telemetry;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>Sends what is queued, one message at a time, and records what became of each attempt. Outlasts a database or mail server that goes away.</summary>
public sealed partial class MailSender(MailLedger ledger, IPost post, TimeProvider time, ILogger<MailSender> log) : BackgroundService
{
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);

    /// <summary>Sends one message that is due; false when none is.</summary>
    public async Task<bool> SendOneAsync(CancellationToken ct)
    {
        if (await ledger.ClaimAsync(ct) is not { } mail) return false;
        using var bytes = new MemoryStream(mail.Mime, writable: false);
        var message = await MimeMessage.LoadAsync(bytes, ct);

        // What is known of an attempt is recorded even when the program is being stopped.
        using var span = FleetMeter.Spans.StartActivity("send mail");
        var delivery = await TryAsync(message, ct);
        FleetMeter.MailAttempts.Add(1, FleetMeter.Outcome(delivery.GetType().Name.ToLowerInvariant()));
        switch (delivery)
        {
            case Delivery.Sent:
                await ledger.SentAsync(mail, CancellationToken.None);
                break;
            case Delivery.Deferred deferred:
                LogNotSent(mail.Message, "is tried again later", deferred.Why);
                await ledger.DeferredAsync(mail, deferred.Why, CancellationToken.None);
                break;
            case Delivery.Unclear unclear:
                LogNotSent(mail.Message, "may or may not have arrived", unclear.Why);
                await ledger.UnclearAsync(mail, unclear.Why, CancellationToken.None);
                break;
            case Delivery.Refused refused:
                LogNotSent(mail.Message, "was refused for good", refused.Why);
                await ledger.RefusedAsync(mail, refused.Why, CancellationToken.None);
                break;
        }

        return true;
    }

    private async Task<Delivery> TryAsync(MimeMessage message, CancellationToken ct)
    {
        try
        {
            return await post.SendAsync(message, ct);
        }
        catch (OperationCanceledException) when (ct.IsCancellationRequested)
        {
            return new Delivery.Deferred("the program was stopped before the message was begun");
        }
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            var wait = Idle;
            try
            {
                if (await SendOneAsync(stoppingToken)) continue;
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                // Whatever it is, stopping here would leave all mail unsent and nobody would notice.
                LogWaiting(e);
                wait = AfterFailure;
            }

            await Task.Delay(wait, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Message {Message} {Fate}: {Why}")]
    private partial void LogNotSent(string message, string fate, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The mail sender waits: the database does not answer or an attempt broke.")]
    private partial void LogWaiting(Exception e);
}
