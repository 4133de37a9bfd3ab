using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Fleet.Advice;

/// <summary>Spares of one size in store, by dock; under no name where nobody said which dock.</summary>
/// <param name="Size">The size.</param>
/// <param name="ByDock">Tags by dock: those that are fit to go on, and those to mend first.</param>
public sealed record SpareLying(PropSize Size, IReadOnlyDictionary<string, IReadOnlyList<PropLife>> ByDock)
{
    /// <summary>What lies in a fleet's store.</summary>
    /// <param name="fleet">The fleet.</param>
    public static IReadOnlyList<SpareLying> Of(FleetRecord fleet) =>
    [
        .. fleet.Props.Select(p => p.Life).Where(l => l is { Place.Standing: PropStanding.Spare, Registered: not null, Loan: null })
            .GroupBy(PropSize.Of).OrderBy(g => g.Key.DiameterInches).ThenBy(g => g.Key.PitchInches).ThenBy(g => g.Key.ToString(), StringComparer.Ordinal)
            .Select(g => new SpareLying(g.Key, g.GroupBy(l => l.Place.Dock ?? "", StringComparer.Ordinal).ToDictionary(d => d.Key, d => (IReadOnlyList<PropLife>)[.. d], StringComparer.Ordinal))),
    ];
}
