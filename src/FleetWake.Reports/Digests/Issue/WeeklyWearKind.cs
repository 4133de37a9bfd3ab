using FleetWake.Logbook.Office;
using FleetWake.Store.Histories;

namespace FleetWake.Reports.Digests.Issue;

/// <summary>The weekly wear digest.</summary>
public sealed class WeeklyWearKind(FleetReading reading) : IDigestKind
{
    /// <inheritdoc/>
    public string Digest => WeeklyWear.Digest;

    /// <inheritdoc/>
    public ScheduledDigest Scheduled => ScheduledDigest.WeeklyWear;

    /// <inheritdoc/>
    public async Task<Composed> ComposeAsync(Wanted wanted, CancellationToken ct)
    {
        var card = wanted.Operator;
        var findings = wanted.Late
            ? await reading.FindingsOnAsync(card.Id, wanted.Day, ct)
            : [.. (await reading.FindingsAsync(card.Id, ct)).Select(f => f.Finding)];
        IReadOnlyList<string> stale = wanted.Late ? [] : await reading.StaleBoatsAsync(card.Id, ct);
        if (wanted.Dock is { } dock)
        {
            // A boat of which only records have arrived may be anybody's: whoever reads of the whole fleet is told.
            findings = [.. findings.Where(f => f.Registered?.Dock == dock)];
            stale = [.. stale.Where(s => findings.Any(f => f.Boat == s))];
        }

        if (findings.Count == 0) return new Composed.NotYet();
        return new Composed.Ready(WeeklyWearDraft.Of(WeeklyWear.Build(card.Name, wanted.Period, wanted.Day, findings, stale, await reading.PolicyAsync(card.Id, ct))));
    }
}
