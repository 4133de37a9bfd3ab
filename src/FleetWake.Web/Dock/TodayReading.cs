using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Store.Attribution;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;
using FleetWake.Web.Api.Reading;

namespace FleetWake.Web.Dock;

/// <summary>Gathers what a dock's phone carries.</summary>
internal sealed class TodayReading(FleetReading reading, FleetOperators operators, DockPeople people, TimeProvider time)
{
    /// <summary>After this long a card says of no boat that it is in hire [h]: the record may have moved on twice since. Judgement.</summary>
    public const double StaleAfterHours = 12;

    /// <summary>Everything of a dock.</summary>
    public async Task<Today> OfAsync(string tenant, string dock, CancellationToken ct)
    {
        // The time before the question, and the question before the findings: a card that is up to date then has every record that was answered before "now".
        var now = time.GetUtcNow();
        var behind = (await reading.StaleBoatsAsync(tenant, ct)).ToHashSet(StringComparer.Ordinal);
        var findings = (await reading.FindingsAsync(tenant, ct)).Select(f => f.Finding).Where(f => f.Retired is null).ToList();
        var office = await reading.OfficeAsync(tenant, ct);
        var card = (await operators.FindAsync(tenant, ct))!;
        var spares = await SpareGathering.OfAsync(reading, tenant, findings, ct);
        var cards = new Cards(dock, office.Policy, await reading.PriorsAsync(tenant, ct), spares, now, behind, office.DockName);
        var here = findings.Where(f => f.Registered?.Dock == dock).ToList();
        var place = DockPlaces.Of(office.Record, findings).FirstOrDefault(d => d.Id == dock) ?? new DockPlace(dock, dock, card.Zone, null, null);
        return new Today(
            now, now, new TodayOperator(card.Id, card.Name, card.Zone), place, StaleAfterHours, PhotoRules.Limits,
            [.. (await people.OfAsync(tenant, ct)).Select(p => new TodayPerson(p.Person, p.Name, p.Role, p.HasPin))],
            office.Policy,
            await CardsAsync(tenant, cards, here, ct),
            [.. findings.Where(f => f.Registered?.Dock != dock).Select(f => new BoatName(f.Boat, f.DisplayName(), f.Registered?.Dock is { } home ? office.DockName(home) : null))],
            [.. spares.Props.Where(p => p.Place.Standing is Logbook.Props.PropStanding.Spare or Logbook.Props.PropStanding.AtShop).OrderBy(p => p.Prop, StringComparer.Ordinal)
                .Select(p => new SpareProp(p.Prop, Cards.Size(p.Numbers.DiameterInches, p.Numbers.PitchInches), p.Registered?.Material, p.Registered?.Blades, p.Registered?.Rotation, p.Place.Dock is { } lies ? office.DockName(lies) : null, p.Place.Standing))],
            [.. spares.Parts.OrderBy(p => p.Part, StringComparer.Ordinal).Select(p => new PartHere(p.Part, p.Kind, p.Name, p.At(dock)))]);
    }

    /// <summary>One boat of the operator, of whichever dock, and when that was so; null when nothing is known of it.</summary>
    public async Task<(Card Card, DateTimeOffset MadeAt)?> OfBoatAsync(string tenant, string dock, string boat, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        IReadOnlySet<string> behind = await reading.IsUpToDateAsync(tenant, boat, ct) ? new HashSet<string>() : new HashSet<string>([boat], StringComparer.Ordinal);
        if (await reading.FindingAsync(tenant, boat, ct) is not { } stored) return null;
        var findings = (await reading.FindingsAsync(tenant, ct)).Select(f => f.Finding);
        var spares = await SpareGathering.OfAsync(reading, tenant, findings, ct);
        var office = await reading.OfficeAsync(tenant, ct);
        var cards = new Cards(dock, office.Policy, await reading.PriorsAsync(tenant, ct), spares, now, behind, office.DockName);
        return ((await CardsAsync(tenant, cards, [stored.Finding], ct))[0], now);
    }

    private async Task<IReadOnlyList<Card>> CardsAsync(string tenant, Cards cards, IReadOnlyList<BoatFinding> findings, CancellationToken ct)
    {
        var histories = await reading.HistoriesAsync(tenant, [.. findings.Select(f => f.Boat)], ct);
        return [.. findings.Zip(histories, cards.Of)];
    }
}
