using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Findings;

/// <summary>A line of a boat's prop plan: which size a position carries for a use.</summary>
/// <param name="Position">The position.</param>
/// <param name="Use">What the size is for.</param>
/// <param name="DiameterInches">Diameter [in].</param>
/// <param name="PitchInches">Pitch [in].</param>
/// <param name="Blades">Number of blades; null when any will do.</param>
/// <param name="Material">Material; null when any will do.</param>
public sealed record PlannedProp(Position Position, PropUse Use, double DiameterInches, double PitchInches, int? Blades, PropMaterial? Material)
{
    internal static PlannedProp Of(PropPlanned planned) =>
        new(planned.Position, planned.Use, planned.DiameterInches, planned.PitchInches, planned.Blades, planned.Material);
}
