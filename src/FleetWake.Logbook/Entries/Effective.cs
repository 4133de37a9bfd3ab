namespace FleetWake.Logbook.Entries;

/// <summary>What counts of a log: the last amendment of each entry in its place, retracted entries left out.</summary>
/// <param name="Facts">The facts that count, in the order of things.</param>
/// <param name="Unmatched">Amendments and retractions whose entry is not in the log, or is of another kind; retractions of what lies on another log only.</param>
public sealed record Effective(IReadOnlyList<IFact> Facts, IReadOnlyList<IFact> Unmatched)
{
    /// <summary>
    /// Settles amendments and retractions. A retraction may itself be retracted. An amendment names the original
    /// or another amendment of it; of those that are not retracted the last typed counts, so retracting it restores
    /// the one before. Retracting the original takes its amendments with it. A retraction reaches only what lies on its
    /// own log.
    /// </summary>
    public static Effective Of(IReadOnlyList<IFact> log) => Of(log, Settlement.Of(log));

    /// <summary>What counts of a log when others that bear on it are settled along: a record may be corrected on another log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="beside">The others; the log itself among them does no harm.</param>
    public static Effective Of(FactLog log, IEnumerable<FactLog> beside) =>
        Of(log.Facts, Settlement.Of(beside.Prepend(log)));

    /// <summary>What counts of one of several logs that were settled together, as far as it happened by a day.</summary>
    internal static Effective Of(IReadOnlyList<IFact> log, Settlement settled, DateOnly? until = null) => new(
        [.. log.Where(f => settled.Counts(f.Entry) && !(f.Entry.Date() > until)).OrderBy(f => f.Entry, settled.Order)],
        [.. log.Where(settled.NamesNothing)]);
}
