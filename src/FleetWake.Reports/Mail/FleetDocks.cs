using FleetWake.Logbook.Findings;
using FleetWake.Store.Histories;
using FleetWake.Store.Operators;

namespace FleetWake.Reports.Mail;

/// <summary>A dock that somebody may read of.</summary>
/// <param name="Dock">Its id.</param>
/// <param name="Name">Its name for people; the id while nobody named it.</param>
/// <param name="Boats">How many boats lie there.</param>
public sealed record FleetDock(string Dock, string Name, int Boats);

/// <summary>Of which docks there is something to read, and who reads of none. Pure.</summary>
public static class FleetDocks
{
    /// <summary>The docks of a fleet: those that were opened, and those that its boats name, by id.</summary>
    public static IReadOnlyList<FleetDock> Of(OfficeState office, IEnumerable<BoatFinding> boats)
    {
        var there = Here(boats).Where(b => b.Registered is not null).GroupBy(b => b.Registered!.Dock, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
        return
        [
            .. office.Record.Docks.Select(d => d.Dock).Concat(there.Keys).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
                .Select(d => new FleetDock(d, office.DockName(d), there.GetValueOrDefault(d))),
        ];
    }

    /// <summary>The dock that somebody means, whose letters may differ in case alone; null when there is none like it.</summary>
    public static FleetDock? Meant(this IReadOnlyList<FleetDock> docks, string typed) =>
        docks.FirstOrDefault(d => d.Dock == typed) ?? docks.FirstOrDefault(d => d.Dock.Equals(typed, StringComparison.OrdinalIgnoreCase));

    /// <summary>The docks in a sentence, e.g. <c>north-pier (3 boats), old-mole (no boat)</c>.</summary>
    public static string Listed(this IEnumerable<FleetDock> docks) =>
        string.Join(", ", docks.Select(d => $"{d.Dock} ({d.Boats switch { 0 => "no boat", 1 => "1 boat", var n => $"{n} boats" }})"));

    /// <summary>What of a fleet reaches nobody, and who waits for mail that cannot come, a sentence each; none when all is well. No address stands in them.</summary>
    /// <param name="operator">Id of the operator.</param>
    /// <param name="readers">Who receives something.</param>
    /// <param name="docks">The docks.</param>
    /// <param name="boats">The boats.</param>
    public static IEnumerable<string> Gaps(string @operator, IReadOnlyCollection<Recipient> readers, IReadOnlyList<FleetDock> docks, IEnumerable<BoatFinding> boats)
    {
        var here = Here(boats).ToList();
        if (here.Count == 0) yield break;
        var reading = readers.Where(r => r.Subscribed).ToList();
        var ofAll = reading.Exists(r => r.Dock is null);
        if (reading.Count == 0) yield return $"{@operator} has {here.Count} {(here.Count == 1 ? "boat" : "boats")}, and nobody receives anything of them: \"fleetwake operator subscribe\"";
        foreach (var group in reading.Where(r => r.Dock is { } d && docks.FirstOrDefault(k => k.Dock == d) is null or { Boats: 0 }).GroupBy(r => (r.Dock, r.Digest)).OrderBy(g => g.Key.Dock, StringComparer.Ordinal).ThenBy(g => g.Key.Digest, StringComparer.Ordinal))
            yield return $"{group.Count()} of {@operator} {(group.Count() == 1 ? "reads" : "read")} {group.Key.Digest} of \"{group.Key.Dock}\", where no boat lies: nothing comes of it (boats lie at {docks.Where(d => d.Boats > 0).Listed()})";
        var homeless = here.Where(b => b.Registered is null).Select(b => b.Boat).Order(StringComparer.Ordinal).ToList();
        if (homeless.Count > 0)
            yield return $"boats of {@operator} without a dock: {string.Join(", ", homeless.Take(5))}{(homeless.Count > 5 ? $" and {homeless.Count - 5} more" : "")}; {(ofAll ? "readers of the whole fleet alone are told of them" : "nobody is told of them")}: register them";
        if (reading.Count == 0 || ofAll) yield break;
        var unread = docks.Where(d => d.Boats > 0 && !reading.Exists(r => r.Dock == d.Dock)).ToList();
        if (unread.Count > 0) yield return $"nobody reads of {unread.Listed()} of {@operator}: subscribe somebody to that dock, or to the whole fleet";
    }

    private static IEnumerable<BoatFinding> Here(IEnumerable<BoatFinding> boats) => boats.Where(b => b.Retired is null);
}
