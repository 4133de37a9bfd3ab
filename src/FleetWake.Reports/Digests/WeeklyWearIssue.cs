using System.Collections.Concurrent;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Mail;
using FleetWake.Store.Histories;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Telemetry;
using Microsoft.Extensions.Logging;

namespace FleetWake.Reports.Digests;

/// <summary>Issues the weekly wear digest of every operator that is due, once a period.</summary>
public sealed partial class WeeklyWearIssue(
    FleetOperators operators,
    FleetReading reading,
    MailLedger ledger,
    DigestRenderer renderer,
    Sender sender,
    IssueSettings settings,
    TimeProvider time,
    ILogger<WeeklyWearIssue> log)
{
    /// <summary>Longest wait for findings to catch up with the record.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(30);

    private readonly ConcurrentDictionary<(string Operator, string Period), DateTimeOffset> waitingSince = new();

    /// <summary>Issues what is due. One operator's failure does not keep the others from theirs.</summary>
    public async Task IssueDueAsync(CancellationToken ct)
    {
        foreach (var card in await operators.AllAsync(ct))
        {
            try
            {
                await IssueAsync(card, ct);
            }
            catch (Exception e) when (e is not OperationCanceledException && !Store.Findings.FindingStep.IsDatabaseDown(e))
            {
                LogFailed(e, card.Id);
            }
        }
    }

    private async Task IssueAsync(OperatorCard card, CancellationToken ct)
    {
        var zone = TimeZoneInfo.FindSystemTimeZoneById(card.Zone);
        var now = time.GetUtcNow();
        var office = await reading.OfficeLogAsync(card.Id, ct);
        var schedule = DigestSchedule.Of(office);
        var due = WeekPeriod.DueAt(now, zone, schedule);
        var issued = await ledger.IssuedAsync(card.Id, WeeklyWear.Digest, ct);
        if (WasIssued(issued, due, now)) return;
        var recipients = await operators.RecipientsAsync(card.Id, WeeklyWear.Digest, ct);
        if (recipients.Count == 0) return;

        // After downtime the record is ahead of its findings, and a period has one digest: it waits for them, not for ever.
        if (!await reading.UpToDateAsync(ct, card.Id) && !WaitedEnough(card.Id, due)) return;
        var missed = MissedPeriods.Of(office, [.. issued.Keys], due, zone, schedule);
        foreach (var period in settings.CatchUp == CatchUp.All ? missed : [])
        {
            var then = schedule.DayIn(WeekPeriod.Monday(period));
            await IssueAsync(card, recipients, new Edition(period, then, await reading.FindingsOnAsync(card.Id, then, ct), [], []), ct);
        }

        var findings = (await reading.FindingsAsync(card.Id, ct)).Select(f => f.Finding).ToList();
        var today = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(now, zone).DateTime);
        var stale = await reading.StaleBoatsAsync(card.Id, ct);
        await IssueAsync(card, recipients, new Edition(due, today, findings, stale, settings.CatchUp == CatchUp.All ? [] : missed), ct);
    }

    private async Task IssueAsync(OperatorCard card, IReadOnlyList<Recipient> recipients, Edition edition, CancellationToken ct)
    {
        if (edition.Findings.Count == 0) return; // Nothing is on record yet: the first digest waits for the first boat.
        using var span = FleetMeter.Spans.StartActivity("issue digest");
        var digest = renderer.Render(WeeklyWear.Build(card.Name, edition.Period, edition.Day, edition.Findings, edition.Stale, await reading.PolicyAsync(card.Id, ct)));
        if (digest.WhyFallback is { } why) LogFallback(card.Id, why);
        var mails = recipients.Select(r => Mail(card, r, edition.Period, digest)).OfType<NewMail>().ToList();
        if (!await ledger.IssueAsync(card, WeeklyWear.Digest, edition.Period, mails, edition.PassedOver, ct)) return;
        LogIssued(card.Id, edition.Period, mails.Count);
        FleetMeter.Digests.Add(1, FleetMeter.Outcome("issued"));
        if (edition.PassedOver is not [var first, ..]) return;
        LogPassedOver(card.Id, edition.PassedOver.Count, first, edition.PassedOver[^1]);
        FleetMeter.Digests.Add(edition.PassedOver.Count, FleetMeter.Outcome("passed_over"));
    }

    /// <summary>
    /// Whether a period had its digest or was passed over with a later one. A schedule that moves to a later day makes an
    /// earlier week the newest due again. What a clock that ran ahead issued says nothing of the weeks until then.
    /// </summary>
    private static bool WasIssued(IReadOnlyDictionary<string, DateTimeOffset> issued, string period, DateTimeOffset now) =>
        issued.ContainsKey(period) || issued.Any(i => string.CompareOrdinal(i.Key, period) > 0 && i.Value <= now);

    private bool WaitedEnough(string @operator, string period) =>
        time.GetUtcNow() - waitingSince.GetOrAdd((@operator, period), _ => time.GetUtcNow()) > Patience;

    private NewMail? Mail(OperatorCard card, Recipient recipient, string period, RenderedDigest digest)
    {
        try
        {
            return Composed(card, recipient, period, digest);
        }
        catch (ArgumentException e)
        {
            // An address that cannot stand in a message must not keep the others from theirs.
            LogUnaddressed(e, recipient.Id, card.Id);
            return null;
        }
    }

    private NewMail Composed(OperatorCard card, Recipient recipient, string period, RenderedDigest digest)
    {
        var message = MailComposer.Compose(digest, sender.To(card, recipient, WeeklyWear.Digest, period, time.GetUtcNow()));
        return Outgoing.Of(message, $"{WeeklyWear.Digest}-{period}-{recipient.Id}", recipient);
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Issued the weekly wear digest of {Operator} for {Period}: {Messages} messages queued.")]
    private partial void LogIssued(string @operator, string period, int messages);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Nothing ran when {Count} weekly digests of {Operator} were due ({First} to {Last}): they were passed over, and the newest issued instead.")]
    private partial void LogPassedOver(string @operator, int count, string first, string last);

    [LoggerMessage(Level = LogLevel.Error, Message = "No message can be made for recipient {Recipient} of {Operator}: its address does not stand in a header.")]
    private partial void LogUnaddressed(Exception e, string recipient, string @operator);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The digest of {Operator} goes out in the plain form: {Why}")]
    private partial void LogFallback(string @operator, string why);

    [LoggerMessage(Level = LogLevel.Error, Message = "The digest of {Operator} could not be made; the next tick tries again.")]
    private partial void LogFailed(Exception e, string @operator);

    /// <summary>One digest to be issued.</summary>
    private sealed record Edition(string Period, DateOnly Day, IReadOnlyList<BoatFinding> Findings, IReadOnlyList<string> Stale, IReadOnlyList<string> PassedOver);
}

/// <summary>Who digests come from.</summary>
/// <param name="Address">Address of the sender.</param>
/// <param name="PublicUrl">Https address of the web room; null when mails carry no unsubscribe link.</param>
public sealed record Sender(string Address, Uri? PublicUrl)
{
    /// <summary>The addressing of one message.</summary>
    public MailAddressing To(OperatorCard card, Recipient recipient, string digest, string period, DateTimeOffset date) => new(
        card.Id,
        card.Name,
        digest,
        period,
        recipient.Id,
        "",
        recipient.Address,
        $"{card.Name} (FleetWake)",
        Address,
        null,
        PublicUrl is null ? null : new Uri(PublicUrl, $"unsubscribe/{recipient.Token}"),
        date);
}
