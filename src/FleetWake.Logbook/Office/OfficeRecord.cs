using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;

namespace FleetWake.Logbook.Office;

/// <summary>What an operator's own log tells of its docks, people, devices, schedules and prices. Rules and the hire table are its policy.</summary>
/// <param name="Docks">Docks, by id, as told last.</param>
/// <param name="People">People by id, with what they do now.</param>
/// <param name="Devices">Devices by id.</param>
/// <param name="Schedules">When each digest goes out.</param>
/// <param name="Prices">Every price that was set, in order.</param>
/// <param name="Released">Entries that were let through after having been kept back.</param>
public sealed record OfficeRecord(
    IReadOnlyList<DockCard> Docks,
    IReadOnlyList<PersonCard> People,
    IReadOnlyList<DeviceCard> Devices,
    IReadOnlyList<Schedule> Schedules,
    IReadOnlyList<Price> Prices,
    IReadOnlyList<Guid> Released)
{
    /// <summary>
    /// The price of a thing on a day: the last one set for that very item, else the last one set for any. Null when none
    /// was set: then nothing is reckoned with it.
    /// </summary>
    public Price? PriceOn(DateOnly day, PricedThing what, string? item = null) =>
        Prices.LastOrDefault(p => p.What == what && p.Item == item && p.From <= day)
        ?? (item is null ? null : PriceOn(day, what));

    /// <summary>Reads the record out of the log of the operator's stream.</summary>
    public static OfficeRecord Of(FactLog log)
    {
        var facts = Effective.Of(log.Facts).Facts;
        return new OfficeRecord(
            [.. Last(facts.OfType<DockOpened>(), d => d.Dock).Select(d => new DockCard(d.Dock, d.Name, d.Zone, d.Water, d.Bottom))],
            PersonCard.Of(facts),
            DeviceCard.Of(facts),
            [.. Last(facts.OfType<ScheduleSet>(), s => s.Digest).Select(s => new Schedule(s.Digest, s.Weekday, s.LocalTime))],
            [.. facts.OfType<PriceSet>().Select(p => new Price(p.What, p.Item, new Money(p.Amount, p.Currency), p.Entry.Date()))],
            [.. facts.OfType<QuarantinedEntryReleased>().Select(q => q.Released).Distinct()]);
    }

    /// <summary>The last of each, ordered by what it is of.</summary>
    private static IEnumerable<T> Last<T, TKey>(IEnumerable<T> facts, Func<T, TKey> key)
        where TKey : notnull =>
        facts.GroupBy(key).Select(g => g.Last()).OrderBy(f => key(f).ToString(), StringComparer.Ordinal);
}

/// <summary>A dock.</summary>
/// <param name="Dock">Its id.</param>
/// <param name="Name">Its name for people.</param>
/// <param name="Zone">Its IANA zone.</param>
/// <param name="Water">The water there, when told.</param>
/// <param name="Bottom">The bottom there, when told.</param>
public sealed record DockCard(string Dock, string Name, string Zone, WaterType? Water, BottomKind? Bottom);

/// <summary>A person, by pseudonymous id.</summary>
/// <param name="Person">The id.</param>
/// <param name="Role">What the person does now.</param>
/// <param name="Since">Dock's date since when.</param>
public sealed record PersonCard(string Person, Role Role, DateOnly Since)
{
    internal static IReadOnlyList<PersonCard> Of(IReadOnlyList<IFact> facts) =>
    [
        .. facts.Select(f => f switch
        {
            PersonInvited i => new PersonCard(i.Person, i.Role, i.Entry.Date()),
            RoleGiven g => new PersonCard(g.Person, g.Role, g.Entry.Date()),
            _ => null,
        }).OfType<PersonCard>().GroupBy(p => p.Person, StringComparer.Ordinal).Select(g => g.Last()).OrderBy(p => p.Person, StringComparer.Ordinal),
    ];
}

/// <summary>A device.</summary>
/// <param name="Device">Its id.</param>
/// <param name="Dock">The dock it was given to; null when only its end is on record.</param>
/// <param name="Since">Dock's date of what was told last.</param>
/// <param name="Revoked">It records no more.</param>
public sealed record DeviceCard(string Device, string? Dock, DateOnly Since, bool Revoked)
{
    internal static IReadOnlyList<DeviceCard> Of(IReadOnlyList<IFact> facts)
    {
        var devices = new SortedDictionary<string, DeviceCard>(StringComparer.Ordinal);
        foreach (var fact in facts)
        {
            if (fact is DeviceEnrolled e) devices[e.Device] = new DeviceCard(e.Device, e.Dock, e.Entry.Date(), false);
            else if (fact is DeviceRevoked r) devices[r.Device] = new DeviceCard(r.Device, devices.GetValueOrDefault(r.Device)?.Dock, r.Entry.Date(), true);
        }

        return [.. devices.Values];
    }
}

/// <summary>When a digest goes out, by the clock of the operator's office.</summary>
/// <param name="Digest">Which digest.</param>
/// <param name="Weekday">On which day of the week.</param>
/// <param name="LocalTime">At what time.</param>
public sealed record Schedule(ScheduledDigest Digest, DayOfWeek Weekday, TimeOnly LocalTime);

/// <summary>A price.</summary>
/// <param name="What">What it is the price of.</param>
/// <param name="Item">Which of them; null for any.</param>
/// <param name="Money">The price.</param>
/// <param name="From">Date from which it counts.</param>
public sealed record Price(PricedThing What, string? Item, Money Money, DateOnly From);
