using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>
/// A prop or an engine came here with something against it from where it was before: a strike that nobody cleared, a
/// verdict, or damage that a short look saw. What the prop may have goes with the prop, what the lower unit may have goes with the engine.
/// </summary>
/// <param name="Entry">Entry id of the strike, the inspection or the short look.</param>
/// <param name="On">Dock's date of it.</param>
/// <param name="Part">What is suspected.</param>
/// <param name="Thing">Id of the prop or the engine.</param>
/// <param name="From">Id of the boat it was on then.</param>
/// <param name="Severity">How hard the strike was; null when it is no strike.</param>
/// <param name="Verdict">The verdict; null when it is no inspection.</param>
/// <param name="Marks">What the inspection saw; empty when it is no inspection.</param>
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
    DateOnly? LiftedOn)
{
    /// <summary>Day of a short look since that saw no damage; of a scuff only, for whatever is heavier needs an inspection.</summary>
    public DateOnly? LookedOverOn { get; init; }

    /// <summary>Day of the last "fit" since that did not see the part, and so cleared nothing.</summary>
    public DateOnly? ShortFitOn { get; init; }
}

/// <summary>What may have taken harm.</summary>
public enum SuspectPart
{
    /// <summary>The prop.</summary>
    Prop,

    /// <summary>Shaft, seal and gears.</summary>
    LowerUnit,
}
