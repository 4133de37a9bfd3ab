namespace FleetWake.Store.Mail;

/// <summary>
/// The periods of one digest that were issued, as they were read once. What is due and under which key it goes out are both told from here: of two
/// workers that read the same, one is refused by the key. A key that was asked for later would count what the other has issued meanwhile.
/// </summary>
public sealed class IssuedPeriods
{
    // Stands between a period and the number of its edition, where there is more than one; in no period and no id of a dock.
    private const char Edition = '~';

    private readonly Dictionary<string, int> editions;

    private IssuedPeriods(IReadOnlyDictionary<string, DateTimeOffset> at, Dictionary<string, int> editions) => (At, this.editions) = (at, editions);

    /// <summary>Each period with when by the clock that issued it; where it was issued more than once, the earliest.</summary>
    public IReadOnlyDictionary<string, DateTimeOffset> At { get; }

    /// <summary>Of what is on record.</summary>
    /// <param name="issued">Each edition, e.g. <c>2026-W11~2</c>, with when it was issued.</param>
    public static IssuedPeriods Of(IEnumerable<(string Edition, DateTimeOffset At)> issued)
    {
        var periods = issued.GroupBy(i => i.Edition.Split(Edition)[0], StringComparer.Ordinal).ToList();
        return new IssuedPeriods(periods.ToDictionary(p => p.Key, p => p.Min(i => i.At), StringComparer.Ordinal), periods.ToDictionary(p => p.Key, p => p.Count(), StringComparer.Ordinal));
    }

    /// <summary>What a period is issued as: itself, or once more, e.g. <c>2026-W11~2</c>, where a clock that ran ahead has issued it.</summary>
    public string NextEdition(string period) => editions.TryGetValue(period, out var many) ? $"{period}{Edition}{many + 1}" : period;
}
