using System.Collections.Concurrent;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Store.Histories;
using FleetWake.Store.Mail;
using FleetWake.Store.Operators;
using FleetWake.Store.Telemetry;
using Microsoft.Extensions.Logging;

namespace FleetWake.Reports.Digests.Issue;

/// <summary>
/// Issues every digest that is due: of each operator, for each dock that has readers and for those of the whole fleet, once a period,
/// whatever clocks, nodes and restarts do.
/// </summary>
public sealed partial class DigestIssue(
    FleetOperators operators,
    FleetReading reading,
    MailLedger ledger,
    IEnumerable<IDigestKind> kinds,
    DigestDesk desk,
    DigestMails mails,
    IssueSettings settings,
    TimeProvider time,
    ILogger<DigestIssue> log)
{
    /// <summary>Longest wait for findings to catch up with the record.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(30);

    private readonly IReadOnlyList<IDigestKind> kinds = [.. kinds];
    private readonly ConcurrentDictionary<(string Operator, string Digest, string? Dock, string Period), DateTimeOffset> waitingSince = new();

    /// <summary>Issues what is due. The failure of one operator, digest or dock does not keep the others from theirs.</summary>
    public async Task IssueDueAsync(CancellationToken ct)
    {
        foreach (var card in await operators.AllAsync(ct))
        {
            FactLog? office = null;
            IReadOnlyList<BoatFinding>? boats = null;
            foreach (var kind in kinds)
            {
                try
                {
                    var readers = await operators.SubscribersAsync(card.Id, kind.Digest, ct);
                    if (readers.Count == 0) continue;
                    office ??= await reading.OfficeLogAsync(card.Id, ct);
                    if (readers.Any(r => r.Dock is not null)) boats ??= [.. (await reading.FindingsAsync(card.Id, ct)).Select(f => f.Finding)];
                    var docks = boats is null ? [] : OfficeRecord.Of(office).Docks;
                    foreach (var group in readers.GroupBy(r => r.Dock, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
                    {
                        var clock = DockClock.Of(group.Key, docks, boats ?? [], TimeZoneInfo.FindSystemTimeZoneById(card.Zone));
                        await TryAsync(new Asked(card, kind, group.Key, [.. group.Where(r => r.TakesMail())], office, clock), ct);
                    }
                }
                catch (Exception e) when (IsOneFailure(e))
                {
                    LogFailed(e, kind.Digest, card.Id);
                }
            }
        }
    }

    private async Task TryAsync(Asked asked, CancellationToken ct)
    {
        try
        {
            await IssueAsync(asked, ct);
        }
        catch (Exception e) when (IsOneFailure(e))
        {
            LogFailed(e, asked.Kind.Digest, asked.Operator.Id);
        }
    }

    private async Task IssueAsync(Asked asked, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var (card, digest) = (asked.Operator, asked.Kind.Digest);
        var line = ScheduleBook.Of(asked.Office).Of(asked.Kind.Scheduled, asked.Dock, asked.Clock);
        if (line.Present.Off) return;
        var issued = await ledger.IssuedAsync(card.Id, digest, asked.Dock, ct);
        if (DueNow.Of(line, issued.At, ReaderSpans.Of(asked.Office, digest, asked.Dock), now) is not { } due) return;

        // After downtime the record is ahead of its findings, and a period has one digest: it waits for them, not for ever.
        if (!await reading.UpToDateAsync(ct, card.Id) && !WaitedEnough(asked, due.Newest.Period)) return;
        var all = (line.Present.Missed ?? settings.Missed) == MissedRule.All;
        var (since, sinceAt) = (due.Since, due.SinceAt);
        foreach (var missed in all ? due.Missed : [])
        {
            var day = line.DayAt(missed.At);
            if (!await IssueAsync(asked, new Wanted(card, asked.Dock, missed.Period, day, true, since, sinceAt), [], issued, ct)) return;

            // One that is made up for tells of its whole day.
            (since, sinceAt) = (day, null);
        }

        var wanted = new Wanted(card, asked.Dock, due.Newest.Period, line.DayAt(now), false, since, sinceAt);
        await IssueAsync(asked, wanted, all ? [] : [.. due.Missed.Select(m => m.Period)], issued, ct);
    }

    /// <summary>Issues one edition; false when it cannot be made yet.</summary>
    private async Task<bool> IssueAsync(Asked asked, Wanted wanted, IReadOnlyList<string> passedOver, IssuedPeriods issued, CancellationToken ct)
    {
        using var span = FleetMeter.Spans.StartActivity("issue digest");
        var (card, digest) = (asked.Operator, asked.Kind.Digest);

        // Where no reader takes mail nothing is written; that it was issued, and without whom, is on record all the same.
        var composed = asked.Readers.Count == 0 ? new Composed.NothingToTell() : await asked.Kind.ComposeAsync(wanted, ct);
        if (composed is Composed.NotYet) return wanted.Late;

        // One that a clock far ahead of ours has issued goes out anew, under a key and a Message-ID of its own.
        var edition = issued.NextEdition(wanted.Period);
        IReadOnlyList<NewMail> messages = [];
        IReadOnlyList<string> unwritten = [];
        if (composed is Composed.Ready ready)
        {
            var rendered = await desk.RenderAsync(card.Id, ready.Draft, ct);
            if (rendered.WhyFallback is { } why) LogFallback(digest, card.Id, why);
            messages = mails.Of(card, digest, edition, asked.Readers, rendered);
            unwritten = DigestMails.Unwritten(asked.Readers, messages);
        }

        if (!await ledger.IssueAsync(card, digest, edition, messages, passedOver, ct, asked.Dock, unwritten)) return true;
        LogIssued(digest, card.Id, asked.Dock ?? "the whole fleet", edition, messages.Count);
        FleetMeter.Digests.Add(1, FleetMeter.Outcome("issued"));
        if (passedOver is not [var first, ..]) return true;
        LogPassedOver(passedOver.Count, digest, card.Id, first, passedOver[^1]);
        FleetMeter.Digests.Add(passedOver.Count, FleetMeter.Outcome("passed_over"));
        return true;
    }

    private bool WaitedEnough(Asked asked, string period) =>
        time.GetUtcNow() - waitingSince.GetOrAdd((asked.Operator.Id, asked.Kind.Digest, asked.Dock, period), _ => time.GetUtcNow()) > Patience;

    private static bool IsOneFailure(Exception e) => e is not OperationCanceledException && !Store.Findings.FindingStep.IsDatabaseDown(e);

    [LoggerMessage(Level = LogLevel.Information, Message = "Issued {Digest} of {Operator} for {Dock}, {Period}: {Messages} messages queued.")]
    private partial void LogIssued(string digest, string @operator, string dock, string period, int messages);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Nothing ran when {Count} editions of {Digest} of {Operator} were due ({First} to {Last}): they were passed over, and the newest issued instead.")]
    private partial void LogPassedOver(int count, string digest, string @operator, string first, string last);

    [LoggerMessage(Level = LogLevel.Warning, Message = "{Digest} of {Operator} goes out in another layout than its own: {Why}")]
    private partial void LogFallback(string digest, string @operator, string why);

    [LoggerMessage(Level = LogLevel.Error, Message = "{Digest} of {Operator} could not be made; the next tick tries again.")]
    private partial void LogFailed(Exception e, string digest, string @operator);

    private sealed record Asked(OperatorCard Operator, IDigestKind Kind, string? Dock, IReadOnlyList<Recipient> Readers, FactLog Office, TimeZoneInfo Clock);
}
