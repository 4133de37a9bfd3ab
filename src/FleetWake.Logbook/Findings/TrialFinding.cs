using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>One trial at one position, worked out.</summary>
/// <param name="Entry">Its entry id.</param>
/// <param name="On">Dock's date.</param>
/// <param name="Hours">Engine hours [h].</param>
/// <param name="HoursBridged">The hours were bridged between two readings, not read with the trial.</param>
/// <param name="Rpm">Mean engine speed over its headings [RPM], as read.</param>
/// <param name="SpeedKnots">Mean speed over its headings [kn]; null when none was read with it.</param>
/// <param name="SlipPercent">Apparent slip [%]; null when pitch or gear ratio is not known; may be negative.</param>
/// <param name="Stretch">Which stretch of the mounting it belongs to, from 0; a new stretch has its own baseline.</param>
/// <param name="SetAside">Why it does not count for drift; null when it counts.</param>
/// <param name="Flags">What widens its doubt.</param>
public sealed record TrialFinding(
    Guid Entry,
    DateOnly On,
    double? Hours,
    bool HoursBridged,
    double Rpm,
    double? SpeedKnots,
    double? SlipPercent,
    int Stretch,
    SetAsideReason? SetAside,
    IReadOnlyList<TrialDoubt> Flags)
{
    /// <summary>The RPM was brought to reference conditions elsewhere: it is not as read, and is never corrected again.</summary>
    public bool Normalised { get; init; }

    /// <summary>What the engine turned [RPM]: <see cref="Rpm"/> brought right by the check of its tachometer; the same number where the gauge was never checked.</summary>
    public double TurnedRpm { get; init; } = Rpm;

    /// <summary>One standard deviation of <see cref="Rpm"/> by the spread of the runs and the gauge's step [RPM]; null when it was brought to reference conditions elsewhere.</summary>
    public double? RpmSd { get; init; }

    /// <summary>One standard deviation of <see cref="SlipPercent"/> [percentage points].</summary>
    public double? SlipSdPercent { get; init; }

    /// <summary>What it would have shown at reference conditions; null when too little was read of the air, or no correction applies.</summary>
    public AtReference? Reference { get; init; }

    /// <summary>Chance that its reading is grossly wrong, by all trials of the mounting [1]: it counts less, and is not thrown away. Null where it does not count.</summary>
    public double? GrossChance { get; init; }

    /// <summary>The RPM of it that a line holds.</summary>
    /// <param name="atReference">The line is one of readings at reference conditions.</param>
    public double LineRpm(bool atReference) => atReference && Reference is { } reference ? reference.Rpm : TurnedRpm;
}

/// <summary>
/// What a trial would have shown at reference conditions: air of 25 deg C and 99 kPa dry (as ISO 15550 and SAE J1349 take it),
/// and a tachometer that is right.
/// </summary>
/// <param name="Rpm">Engine speed [RPM].</param>
/// <param name="RpmSd">One standard deviation of it [RPM]; null when it was brought there elsewhere.</param>
/// <param name="SpeedKnots">Speed [kn]; null when none was read.</param>
/// <param name="CorrectionFactor">Factor that brings power to reference air [1]; null when it was brought there elsewhere.</param>
public sealed record AtReference(double Rpm, double? RpmSd, double? SpeedKnots, double? CorrectionFactor);

/// <summary>Why a trial does not count for drift. It stays in the record and in the picture.</summary>
public enum SetAsideReason
{
    /// <summary>Part throttle: shows slip, not the band.</summary>
    PartThrottle,

    /// <summary>The limiter held the engine: its reading is a lower bound.</summary>
    LimiterReached,

    /// <summary>The prop drew air: RPM without speed, which says nothing of blades.</summary>
    Ventilated,

    /// <summary>Nobody knows the engine's hours at that time.</summary>
    HoursUnknown,

    /// <summary>The reading is too far from the rated band to be believed; somebody is asked.</summary>
    NotCredible,

    /// <summary>As read at the helm, where more trials of the mounting were brought to reference conditions, or the other way round: no line holds both.</summary>
    OtherConditions,
}
