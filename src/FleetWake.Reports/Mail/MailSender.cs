using FleetWake.Store.Mail;
using FleetWake.Store.Telemetry;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using MimeKit;

namespace FleetWake.Reports.Mail;

/// <summary>
/// Sends what is queued, several messages side by side, and records what became of each attempt. Outlasts a database or mail
/// server that goes away; a host that is slow or asks to be left alone delays its own mail only.
/// </summary>
public sealed partial class MailSender(MailLedger ledger, IPost post, TimeProvider time, ILogger<MailSender> log, SendingSettings? sending = null, MailSigning? signing = null, MailJournal? journal = null)
    : BackgroundService
{
    private static readonly TimeSpan Idle = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan AfterFailure = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan BetweenSweeps = TimeSpan.FromHours(1);

    private readonly SendingSettings settings = sending ?? SendingSettings.Usual;
    private readonly HostGates gates = new(sending ?? SendingSettings.Usual, time);

    // Claims come one after the other, so that two of them do not pass one gate.
    private readonly SemaphoreSlim turn = new(1);

    private DateTimeOffset sweptAt = DateTimeOffset.MinValue;

    /// <summary>Sends one message that is due; false when none is.</summary>
    public async Task<bool> SendOneAsync(CancellationToken ct)
    {
        if (await ClaimAsync(ct) is not { } mail) return false;
        Delivery delivery = new Delivery.Deferred("the attempt broke before the message was begun");
        try
        {
            // What is known of an attempt is recorded even when the program is being stopped.
            using var span = FleetMeter.Spans.StartActivity("send mail");
            delivery = await TryAsync(mail, ct);
            FleetMeter.MailAttempts.Add(1, FleetMeter.Outcome(delivery.GetType().Name.ToLowerInvariant()));
            await RecordAsync(mail, delivery);
        }
        finally
        {
            await turn.WaitAsync(CancellationToken.None);
            gates.Leave(mail.Host, delivery);
            turn.Release();
        }

        return true;
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        turn.Dispose();
        base.Dispose();
    }

    /// <inheritdoc/>
    protected override Task ExecuteAsync(CancellationToken stoppingToken) =>
        Task.WhenAll(Enumerable.Range(0, settings.Senders).Select(_ => GoOnAsync(stoppingToken)).Append(SweepAsync(stoppingToken)));

    private async Task<ClaimedMail?> ClaimAsync(CancellationToken ct)
    {
        await turn.WaitAsync(ct);
        try
        {
            if (gates.AllClosed || await ledger.ClaimAsync(gates.Closed(), ct) is not { } mail) return null;
            gates.Enter(mail.Host);
            return mail;
        }
        finally
        {
            turn.Release();
        }
    }

    private async Task<Delivery> TryAsync(ClaimedMail mail, CancellationToken ct)
    {
        try
        {
            using var bytes = new MemoryStream(mail.Mime, writable: false);
            var message = await MimeMessage.LoadAsync(bytes, ct);
            signing?.Sign(message, time.GetUtcNow());
            return await HandOverAsync(mail, message, ct);
        }
        catch (OperationCanceledException) when (ct.IsCancellationRequested)
        {
            return new Delivery.Deferred("the program was stopped before the message was begun");
        }
        catch (Exception e) when (e is FormatException or ArgumentException or System.Security.Cryptography.CryptographicException)
        {
            // Nothing was begun: a message that cannot be read or signed must not look as if it may have arrived.
            return new Delivery.Deferred(Redaction.Of($"it could not be made ready: {e.Message}"));
        }
    }

    /// <summary>Notes the attempt outside the database, before and after. What the journal knows and the database does not is not done again.</summary>
    private async Task<Delivery> HandOverAsync(ClaimedMail mail, MimeMessage message, CancellationToken ct)
    {
        if (journal is null) return await post.SendAsync(message, ct);
        try
        {
            if (journal.Before(mail) is { } known) return known;
            journal.Begin(mail);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new Delivery.Deferred(Redaction.Of($"the journal of mail cannot be written: {e.Message}"), Waits.Everything);
        }

        Delivery delivery = new Delivery.Deferred("stopped before the message was begun");
        try
        {
            return delivery = await post.SendAsync(message, ct);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            // Nobody knows what became of it; so says the ledger when its lease is over.
            delivery = new Delivery.Unclear(e.Message);
            throw;
        }
        finally
        {
            try
            {
                journal.End(mail, delivery);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                LogNotNoted(e, mail.Message);
            }
        }
    }

    private async Task RecordAsync(ClaimedMail mail, Delivery delivery)
    {
        switch (delivery)
        {
            case Delivery.Sent sent:
                await ledger.SentAsync(mail, CancellationToken.None, sent.Said);
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
                LogNotSent(mail.Message, refused.AboutAddress ? "was refused for good, and nothing more goes to its address" : "was refused for good", refused.Why);
                await ledger.RefusedAsync(mail, refused.Why, CancellationToken.None, refused.AboutAddress);
                break;
        }
    }

    private Task GoOnAsync(CancellationToken stop) => RepeatAsync(async () => await SendOneAsync(stop) ? TimeSpan.Zero : Idle, stop);

    private Task SweepAsync(CancellationToken stop) => RepeatAsync(
        async () =>
        {
            // By the clock of the program, which tests set, and not by waits, which they do not.
            if (time.GetUtcNow() - sweptAt >= BetweenSweeps)
            {
                await ledger.ForgetSettledAsync(stop);
                sweptAt = time.GetUtcNow();
            }

            return AfterFailure;
        },
        stop);

    private async Task RepeatAsync(Func<Task<TimeSpan>> step, CancellationToken stop)
    {
        while (!stop.IsCancellationRequested)
        {
            var wait = AfterFailure;
            try
            {
                wait = await step();
            }
            catch (OperationCanceledException) when (stop.IsCancellationRequested)
            {
                return;
            }
            catch (Exception e)
            {
                // Whatever it is, stopping here would leave all mail unsent and nobody would notice.
                LogWaiting(e);
            }

            if (wait > TimeSpan.Zero) await Task.Delay(wait, time, stop).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "Message {Message} {Fate}: {Why}")]
    private partial void LogNotSent(string message, string fate, string why);

    [LoggerMessage(Level = LogLevel.Warning, Message = "What became of message {Message} could not be noted in the journal of mail: after a restore it counts as unclear.")]
    private partial void LogNotNoted(Exception e, string message);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The mail sender waits: the database does not answer or an attempt broke.")]
    private partial void LogWaiting(Exception e);
}
