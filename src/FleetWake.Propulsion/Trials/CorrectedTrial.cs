using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Propulsion.Trials;

/// <summary>What a trial showed, and what it would have shown at reference conditions.</summary>
/// <param name="Rpm">Mean engine rate over its headings [rev/min], as read.</param>
/// <param name="SpeedKnots">Mean speed over its headings [kn], current removed where the runs allow; null when none was read.</param>
/// <param name="SlipFraction">Apparent slip [1] with its doubt; null when pitch, gear ratio or speed is not known. May be negative.</param>
/// <param name="Correction">The power correction that was applied; null when none was.</param>
/// <param name="CorrectedRpm">Engine rate at reference conditions [rev/min]; as read where nothing could be corrected, with the doubt that this leaves.</param>
/// <param name="CorrectedSpeedKnots">Speed at reference conditions [kn]; null when none was read.</param>
/// <param name="Method">How the mean speed was made.</param>
/// <param name="Doubts">What widens the doubt, each once, in the order of their declaration.</param>
public sealed record CorrectedTrial(
    Uncertain Rpm,
    Uncertain? SpeedKnots,
    Uncertain? SlipFraction,
    PowerCorrection? Correction,
    Uncertain CorrectedRpm,
    Uncertain? CorrectedSpeedKnots,
    MeanSpeedMethod Method,
    IReadOnlyList<TrialDoubt> Doubts)
{
    /// <summary>The power correction that was worked out but not applied, being outside validity or for an engine that hides the air; else null.</summary>
    public PowerCorrection? NotApplied { get; init; }

    /// <summary>
    /// What the tachometer's own error adds to the doubt of <see cref="CorrectedRpm"/> when it is held against the band, one
    /// standard deviation [rev/min]: all that it may be off when it was never held against an instrument, and what the check
    /// left open when it was. All trials of that gauge share it, so that it does not blur a comparison of the boat with
    /// itself and is not in <see cref="CorrectedRpm"/>.
    /// </summary>
    public double UncheckedTachometerRpm { get; init; }

    /// <summary>Covariance [1] of the natural logarithms of corrected RPM and corrected speed; 0 when no speed was read.</summary>
    public double LogCovariance { get; init; }
}
