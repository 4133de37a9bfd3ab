using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>
/// A prop or an engine came here with something against it from where it was before: a strike that nobody cleared, or a
/// verdict. What the prop may have goes with the prop, what the lower unit may have goes with the engine.
/// </summary>
/// <param name="Entry">Entry id of the strike or the inspection.</param>
/// <param name="On">Dock's date of it.</param>
/// <param name="Part">What is suspected.</param>
/// <param name="Thing">Id of the prop or the engine.</param>
/// <param name="From">Id of the boat it was on then.</param>
/// <param name="Severity">How hard the strike was; null when it is a verdict.</param>
/// <param name="Verdict">The verdict; null when it is a strike.</param>
/// <param name="Marks">What the inspection saw; empty when it is a strike.</param>
/// <param name="Material">Material of the prop that was struck or looked at, where known.</param>
/// <param name="LiftedOn">Day on which somebody put this boat back in hire in spite of it; null when nobody did.</param>
public sealed record CarriedSuspicion(
    Guid Entry,
    DateOnly On,
    SuspectPart Part,
    string Thing,
    string From,
    StrikeSeverity? Severity,
    Verdict? Verdict,
    IReadOnlyList<InspectionMark> Marks,
    PropMaterial? Material,
    DateOnly? LiftedOn);

/// <summary>What may have taken harm.</summary>
public enum SuspectPart
{
    /// <summary>The prop.</summary>
    Prop,

    /// <summary>Shaft, seal and gears.</summary>
    LowerUnit,
}
