using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Parts;

/// <summary>What there is of a small part, and where.</summary>
/// <param name="Part">Id of the part.</param>
/// <param name="Name">Its name for people, as told last.</param>
/// <param name="Kind">What it is; null while nobody stocked it.</param>
/// <param name="Docks">What each dock has, by dock id.</param>
/// <param name="UsedFromNowhere">Pieces used with no dock named, until every dock that had the part then was counted: the docks have that many less, together.</param>
public sealed record PartStock(string Part, string? Name, PartKind? Kind, IReadOnlyList<DockStock> Docks, int UsedFromNowhere)
{
    /// <summary>Pieces at all docks, less those used with no dock named.</summary>
    public int Total() => Docks.Sum(d => d.Quantity) - UsedFromNowhere;

    /// <summary>Pieces at a dock; null while no record speaks of it.</summary>
    public int? At(string? dock) => Docks.FirstOrDefault(d => d.Dock == dock)?.Quantity;

    /// <summary>Boats whose logs a part's uses may be corrected on: a mounting that is taken back gives its pin back.</summary>
    public static IEnumerable<string> BoatsNamed(FactLog part) =>
        part.Facts.OfType<PartUsed>().Select(u => u.Boat).OfType<string>().Distinct(StringComparer.Ordinal);

    /// <summary>Reads the stock out of a part's log.</summary>
    /// <param name="log">The part's log.</param>
    /// <param name="boats">Logs of the boats that <see cref="BoatsNamed"/> tells.</param>
    public static PartStock Of(FactLog log, IEnumerable<FactLog>? boats = null)
    {
        var part = StreamName.PartOf(log.Id) ?? throw new ArgumentException($"{log.Id} is no part's stream", nameof(log));

        // Boats first: where a use shares its entry with a mounting, the mounting is the record and the use its notice.
        var settled = Settlement.Of([.. boats ?? [], log]);
        var facts = Effective.Of(log.Facts, settled).Facts;
        var docks = new SortedDictionary<string, DockStock>(StringComparer.Ordinal);
        var nowhere = new List<(int Quantity, HashSet<string> Uncounted)>();
        DockStock Dock(string dock) => docks.TryGetValue(dock, out var stock) ? stock : new DockStock(dock, 0, null);
        foreach (var fact in facts)
        {
            switch (fact)
            {
                case PartStocked stocked:
                    docks[stocked.Dock] = Dock(stocked.Dock).With(stocked.Quantity);
                    break;
                case PartCounted counted:
                    docks[counted.Dock] = new DockStock(counted.Dock, counted.Quantity, counted.Entry.Date());

                    // It may have been any dock's: only a count of all of them settles it.
                    foreach (var use in nowhere) use.Uncounted.Remove(counted.Dock);
                    nowhere.RemoveAll(use => use.Uncounted.Count == 0);
                    break;
                case PartUsed { Dock: { } from } used:
                    docks[from] = Dock(from).With(-used.Quantity);
                    break;
                case PartUsed used:
                    nowhere.Add((used.Quantity, [.. docks.Keys]));
                    break;
            }
        }

        var told = facts.OfType<PartStocked>().ToList();
        return new PartStock(part, told.LastOrDefault(s => s.Name is not null)?.Name, told.LastOrDefault()?.PartKind, [.. docks.Values], nowhere.Sum(use => use.Quantity));
    }
}

/// <summary>What a dock has of a small part.</summary>
/// <param name="Dock">Id of the dock.</param>
/// <param name="Quantity">Pieces; below zero when more were used than were told to have come: it wants counting.</param>
/// <param name="CountedOn">Dock's date of the last stock-take; null when nobody counted.</param>
public sealed record DockStock(string Dock, int Quantity, DateOnly? CountedOn)
{
    internal DockStock With(int more) => this with { Quantity = Quantity + more };
}
