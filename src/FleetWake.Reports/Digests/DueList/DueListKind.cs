using FleetWake.Logbook.Office;
using FleetWake.Reports.Digests.Issue;
using FleetWake.Reports.Mail;
using FleetWake.Store.Histories;
using FleetWake.Store.People;

namespace FleetWake.Reports.Digests.DueList;

/// <summary>The due list of a dock, daily or weekly.</summary>
public sealed class DueListKind(FleetReading reading, FleetPeople people, Sender sender, TimeProvider time) : IDigestKind
{
    /// <inheritdoc/>
    public string Digest => DueListDigest.Digest;

    /// <inheritdoc/>
    public ScheduledDigest Scheduled => ScheduledDigest.DueList;

    /// <inheritdoc/>
    public async Task<Composed> ComposeAsync(Wanted wanted, CancellationToken ct)
    {
        var card = wanted.Operator;
        var findings = wanted.Late ? await reading.FindingsOnAsync(card.Id, wanted.Day, ct) : [.. (await reading.FindingsAsync(card.Id, ct)).Select(f => f.Finding)];
        if (wanted.Dock is { } only) findings = [.. findings.Where(f => f.Registered?.Dock == only)];
        if (findings.Count == 0) return new Composed.NotYet();
        var office = await reading.OfficeAsync(card.Id, ct);
        var names = await MailNames.OfAsync(card.Id, findings, office, people, sender.PublicUrl, ct);
        var content = DueListDigest.Build(card.Name, wanted.Period, wanted.Day, findings, names, office.Policy);
        var zone = wanted.Dock is not null ? findings.FirstOrDefault()?.Registered?.DockZone ?? card.Zone : card.Zone;
        return new Composed.Ready(DueListDraft.Of(content, card.Id, zone, DueListDigest.Items(wanted.Day, findings, office.Policy).Select(d => d.Item), time.GetUtcNow(), names));
    }
}
