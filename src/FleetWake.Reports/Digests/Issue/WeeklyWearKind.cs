using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet.Advice;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Office;
using FleetWake.Reports.Digests.Wear;
using FleetWake.Store.Histories;
using FleetWake.Store.People;

namespace FleetWake.Reports.Digests.Issue;

/// <summary>The weekly wear digest.</summary>
public sealed class WeeklyWearKind(FleetReading reading, FleetPeople people, Sender sender) : IDigestKind
{
    /// <summary>What arrives while an edition is put together may not be in it any more: rather told twice than not at all.</summary>
    private static readonly TimeSpan Composing = TimeSpan.FromMinutes(5);

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
        var everywhere = findings;
        if (wanted.Dock is { } dock)
        {
            // A boat of which only records have arrived may be anybody's: whoever reads of the whole fleet is told.
            findings = [.. findings.Where(f => f.Registered?.Dock == dock)];
            stale = [.. stale.Where(s => findings.Any(f => f.Boat == s))];
        }

        if (findings.Count == 0) return new Composed.NotYet();
        var news = (await NewsAsync(wanted, findings, ct)) with { Everywhere = wanted.Dock is null ? null : everywhere };
        return new Composed.Ready(WeeklyWearDraft.Of(WeeklyWear.Build(card.Name, wanted.Period, wanted.Day, findings, stale, await reading.PolicyAsync(card.Id, ct), news)), findings.Count);
    }

    /// <summary>What is told beside the findings. Of a day in the past only what findings tell is known as it was then, so the rest is left to the newest edition.</summary>
    private async Task<WearNews> NewsAsync(Wanted wanted, IReadOnlyList<BoatFinding> findings, CancellationToken ct)
    {
        var id = wanted.Operator.Id;
        var office = await reading.OfficeAsync(id, ct);
        var news = new WearNews
        {
            Office = office.Record,
            Dock = wanted.Dock,
            Since = wanted.Since,
            Pages = sender.PublicUrl,
            Names = await MailNames.OfAsync(wanted.Operator.Id, findings, office, people, sender.PublicUrl, ct),
        };
        if (wanted.SinceAt is { } at) news = news with { Received = await reading.ReceivedSinceAsync(id, at - Composing, ct) };
        if (wanted.Late) return news;
        var (fleet, boats) = await reading.FleetAsync(id, ct);
        var here = findings.Select(f => f.Boat).ToHashSet(StringComparer.Ordinal);
        return news with
        {
            // Of the props at a shop a dock's reader is told of those that came off its boats.
            AtShop = [.. (await reading.PropsAtShopAsync(id, ct)).Where(l => wanted.Dock is null || (l.Mountings.LastOrDefault() is { } last && here.Contains(last.Boat)))],
            Loaners = wanted.Dock is null ? await reading.LoanersAsync(id, ct) : [],
            PropsWanted = fleet is null ? [] : PropWanted.Of(findings, SpareLying.Of(fleet)),
            Spares = fleet is null ? null : SpareNeeds.Of(fleet),
            Strikes = fleet is null ? null : StrikeRates.Of(fleet),
            FiguresLeftOut = fleet is null ? $"Spares and strikes of {boats} boats are too much to reckon on the way: write the record to sheets and run \"fleetwake fleet FOLDER\"." : null,
        };
    }
}
