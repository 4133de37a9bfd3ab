using System.Collections.Concurrent;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mail;
using FleetWake.Reports.Digests.Issue;
using FleetWake.Reports.Digests.Templates;
using FleetWake.Store.Alerts;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Store.Telemetry;
using Microsoft.Extensions.Logging;

namespace FleetWake.Reports.Digests.Alert;

/// <summary>Tells by alert of what cannot wait, each cause once to the readers of its dock and once to those of the whole fleet.</summary>
public sealed partial class AlertIssue(
    FleetOperators operators, FleetReading reading, AlertBook book, DigestDesk desk, DigestMails mails, Sender sender, TimeProvider time, ILogger<AlertIssue> log)
{
    /// <summary>A boat's records come one by one: so long it is waited for its finding to catch up, so that what they tell comes in one message.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    /// <summary>When alerts begin, or begin again after a pause, what happened so many days ago or later is told; the rest is in the weekly digest [days].</summary>
    private const int FreshDays = 1;

    private readonly ConcurrentDictionary<string, DateTimeOffset> behindSince = new(StringComparer.Ordinal);

    /// <summary>Tells what is due. The failure of one operator does not keep the others from theirs.</summary>
    public async Task TellDueAsync(CancellationToken ct)
    {
        foreach (var card in await operators.AllAsync(ct))
        {
            try
            {
                await TellAsync(card, ct);
            }
            catch (Exception e) when (e is not OperationCanceledException && !Store.Findings.FindingStep.IsDatabaseDown(e))
            {
                LogFailed(e, card.Id);
            }
        }
    }

    private async Task TellAsync(OperatorCard card, CancellationToken ct)
    {
        var readers = await operators.SubscribersAsync(card.Id, DigestNames.Alert, ct);
        var hooked = await book.IsHookedAsync(card.Id, ct);
        var office = await reading.OfficeAsync(card.Id, ct);
        var rule = office.Schedules.Alerts;

        // The operator's own program is told as readers of the whole fleet are, also where there are none.
        List<string?> docks = rule.Off ? [] : [.. readers.Select(r => r.Dock).Concat(hooked ? [null] : Array.Empty<string?>()).Distinct(StringComparer.Ordinal).OrderBy(d => d, StringComparer.Ordinal)];
        await book.OnlyAsync(card.Id, docks, ct);
        if (docks.Count == 0) return;
        var findings = (await reading.FindingsAsync(card.Id, ct)).Select(f => f.Finding).ToList();
        var all = AlertCauses.Of(findings, office.Policy, rule);

        IReadOnlySet<string>? behind = null;
        foreach (var dock in docks)
        {
            var causes = all.Where(c => dock is null || c.Dock == dock).DistinctBy(c => c.Key).ToList();
            var zone = DockClock.Of(dock, office.Record.Docks, findings, TimeZoneInfo.FindSystemTimeZoneById(card.Zone));
            var (now, today) = (time.GetUtcNow(), DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(time.GetUtcNow(), zone).DateTime));
            var since = await book.WaitingAsync(card.Id, dock, causes.ToDictionary(c => c.Key, c => c.On >= today.AddDays(-FreshDays), StringComparer.Ordinal), ct);
            var waiting = causes.Where(c => since.ContainsKey(c.Key)).Select(c => (Cause: c, Since: since[c.Key])).ToList();
            if (!AlertDue.Of(waiting, rule, now, zone)) continue;
            behind ??= await BehindAsync(card.Id, ct);

            // What is urgent waits for its own boats alone, the rest for all.
            var urgent = waiting.Where(w => w.Cause.Urgent).Select(w => w.Cause.Boat).ToList();
            if (urgent.Count > 0 ? urgent.Exists(behind.Contains) : behind.Count > 0) continue;
            await TellAsync(card, dock, [.. readers.Where(r => r.Dock == dock && r.TakesMail())], [.. waiting.Select(w => w.Cause)], findings, office, ct);
        }
    }

    private async Task TellAsync(
        OperatorCard card, string? dock, IReadOnlyList<Recipient> readers, IReadOnlyList<AlertCause> causes, IReadOnlyList<BoatFinding> findings, OfficeState office, CancellationToken ct)
    {
        using var span = FleetMeter.Spans.StartActivity("issue alert");
        var period = Key(time.GetUtcNow(), causes);
        var draft = AlertContent.Draft(card.Name, causes, findings, office.DockName, sender.PublicUrl);
        var rendered = await desk.RenderAsync(card.Id, draft, ct);
        if (rendered.WhyFallback is { } why) LogFallback(card.Id, why);
        var messages = mails.Of(card, DigestNames.Alert, period, readers, rendered);
        if (!await book.TellAsync(card, dock, period, messages, [.. causes.Select(c => c.Key)], dock is null ? AlertJson.Of(card.Id, period, draft, causes) : null, ct, DigestMails.Unwritten(readers, messages))) return;
        LogTold(card.Id, causes.Count, dock ?? "the whole fleet", messages.Count);
        FleetMeter.Digests.Add(1, FleetMeter.Outcome("issued"));
    }

    /// <summary>Boats whose findings lag behind the record, for a little while at the most: a boat that cannot be assessed keeps nobody waiting. Asked once a tick, for all docks alike.</summary>
    private async Task<IReadOnlySet<string>> BehindAsync(string @operator, CancellationToken ct)
    {
        var boats = await reading.BoatsBehindAsync(@operator, ct);
        var now = time.GetUtcNow();
        if (boats.Count > 0 && (now - behindSince.GetOrAdd(@operator, now)).Duration() <= Patience) return boats;
        behindSince.TryRemove(@operator, out _);
        return new HashSet<string>();
    }

    /// <summary>Key of an alert: its minute, and what it tells of.</summary>
    internal static string Key(DateTimeOffset now, IEnumerable<AlertCause> causes) =>
        now.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm'Z'", CultureInfo.InvariantCulture) + "-" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', causes.Select(c => c.Key)))))[..8];

    [LoggerMessage(Level = LogLevel.Information, Message = "Told {Operator} of {Causes} matters by alert, for {Dock}: {Messages} messages queued.")]
    private partial void LogTold(string @operator, int causes, string dock, int messages);

    [LoggerMessage(Level = LogLevel.Warning, Message = "An alert of {Operator} goes out in the plain form: {Why}")]
    private partial void LogFallback(string @operator, string why);

    [LoggerMessage(Level = LogLevel.Error, Message = "Alerts of {Operator} could not be told; the next tick tries again.")]
    private partial void LogFailed(Exception e, string @operator);
}
