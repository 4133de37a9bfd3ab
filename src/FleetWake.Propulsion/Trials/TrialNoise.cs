namespace FleetWake.Propulsion.Trials;

/// <summary>
/// How far readings of a trial may be off, one standard deviation each. Where nothing else is said: engineering judgement
/// or common practice, no source. A fleet's own record tells better, and the drift estimate learns it.
/// </summary>
/// <remarks>
/// The parts were chosen so that a double run comes to 0.7 % in RPM and 1.5 % in speed once it is corrected: what wind,
/// waves, trim and a hand on the wheel leave (engineering judgement, no source). Most of the RPM's is common to the runs of
/// a trial, since its two headings usually agree within 0.5 % (common practice, no source).
/// </remarks>
public static class TrialNoise
{
    /// <summary>Between runs of one trial, RPM [1].</summary>
    public const double RunRpm = 0.0025;

    /// <summary>Between runs of one trial, speed [1].</summary>
    public const double RunSpeed = 0.015;

    /// <summary>Between trials, beyond what their runs show, RPM [1].</summary>
    public const double TrialRpm = 0.0067;

    /// <summary>Between trials, beyond what their runs show, speed [1].</summary>
    public const double TrialSpeed = 0.010;

    /// <summary>
    /// How many runs the two constants for runs are worth beside the spread that a trial shows: with few runs the spread
    /// says little, and none at all when a coarse gauge shows the same number twice.
    /// </summary>
    public const double RunsWorth = 4;

    /// <summary>A GPS receiver's speed, per run [kn]; 0.05 m/s is what makers of receivers state (from memory).</summary>
    public const double GpsKnots = 0.1;

    /// <summary>A current that stays in a speed because no run opposes it [kn].</summary>
    public const double CurrentKnots = 0.7;

    /// <summary>Readings within a run count as new ones only so long apart [s]: a boat's own sway holds them together.</summary>
    public const double SecondsApart = 5;

    /// <summary>A tachometer that was never held against an instrument, against the truth [1].</summary>
    public const double UncheckedTachometer = 0.015;

    /// <summary>What a run adds that was too short to settle: RPM [1], and twice as much in speed.</summary>
    public const double ShortRun = 0.01;

    /// <summary>What a run adds in which the prop drew air: RPM [1], and as much in speed.</summary>
    public const double Ventilation = 0.02;

    /// <summary>
    /// What a run adds that the limiter held [1]. The truth lies above the reading and never below; the widening only keeps
    /// whoever overlooks the flag from being sure.
    /// </summary>
    public const double Limiter = 0.02;

    /// <summary>Trim unlike the baseline's: RPM [1].</summary>
    public const double TrimRpm = 0.01;

    /// <summary>Trim unlike the baseline's: speed [1].</summary>
    public const double TrimSpeed = 0.015;

    /// <summary>
    /// Load unlike the baseline's, as a share of a displacement that is known: RPM [1]. Ten per cent of displacement moves RPM by
    /// 0.5 to 1.9 % in the nonlinear balance of boats of 420 to 1800 kg (computed, no published value); taken as 1.4 %, the
    /// root mean square of -0.13 +/- 0.04 per unit (<see cref="Advice.LoadCase.RpmByDisplacement"/>).
    /// </summary>
    public const double LoadRpm = 0.136;

    /// <summary>The displacement that is assumed where none is known [kg]: a small boat of this trade, on which 100 kg move RPM by 2 %.</summary>
    public const double UnknownDisplacementKilograms = 680;

    /// <summary>What load moves speed by over what it moves RPM by [1], as resistance moves the two.</summary>
    public const double LoadSpeedByRpm = 2;

    /// <summary>From salt to fresh water or back: RPM [1]; +0.5 to +0.8 % in the nonlinear balance (computed, no published value).</summary>
    public const double WaterRpm = 0.007;

    /// <summary>From salt to fresh water or back: speed [1]; +0.1 to +0.7 % there.</summary>
    public const double WaterSpeed = 0.005;

    /// <summary>Shallow water: RPM [1].</summary>
    public const double ShallowRpm = 0.01;

    /// <summary>Shallow water: speed [1].</summary>
    public const double ShallowSpeed = 0.02;
}
