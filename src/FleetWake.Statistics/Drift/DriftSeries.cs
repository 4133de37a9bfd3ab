namespace FleetWake.Statistics.Drift;

/// <summary>One trial of a mounting, as the drift estimator sees it.</summary>
/// <param name="Week">When [weeks] since any fixed moment; only differences and the order count.</param>
/// <param name="EngineHours">Engine hours [h] since any fixed reading of the mounting.</param>
/// <param name="Rpm">Full-throttle RPM [1/min], normalised as well as could be.</param>
/// <param name="AirCelsius">Air temperature [degC], or null when nobody read it: counted as the reference.</param>
/// <param name="LoadKilograms">Load above the boat's usual one [kg], or null: counted as the usual load.</param>
/// <param name="OwnSdRpm">
/// Further standard deviation of this very trial [1/min], beyond the noise of any trial of the fleet: run on one heading only,
/// say. NaN, infinite or below 0 counts as 0; a trial with one above its own RPM says nothing and is left aside.
/// </param>
public readonly record struct DriftTrial(
    double Week, double EngineHours, double Rpm, double? AirCelsius = null, double? LoadKilograms = null, double OwnSdRpm = 0);

/// <summary>What an event between two trials may do to the level of the RPM.</summary>
public enum StepKind
{
    /// <summary>Nothing: a look, a calendar entry.</summary>
    None,

    /// <summary>A strike: the RPM more likely rises than falls, for blades that are bent or torn grip less.</summary>
    Strike,

    /// <summary>A repitch or a repair: the level may go anywhere.</summary>
    Repitch,

    /// <summary>Hub, cleaning, engine, tachometer, rig, relaunch: a new baseline that may lie anywhere.</summary>
    NewBaseline,
}

/// <summary>An event between trials.</summary>
/// <param name="Week">When [weeks], on the clock of <see cref="DriftTrial.Week"/>.</param>
/// <param name="Kind">What it may do to the level.</param>
public readonly record struct DriftEvent(double Week, StepKind Kind);

/// <summary>The history of one mounting: a propeller fitted once.</summary>
/// <param name="RatedMinRpm">Lower end of the rated band [1/min].</param>
/// <param name="RatedMaxRpm">Upper end of the rated band [1/min]; ends given the wrong way round are exchanged.</param>
/// <param name="Trials">Its trials in any order. Those without a finite time, hours and a positive RPM are left aside.</param>
/// <param name="Events">Its events in any order.</param>
public sealed record DriftSeries(
    double RatedMinRpm,
    double RatedMaxRpm,
    IReadOnlyList<DriftTrial> Trials,
    IReadOnlyList<DriftEvent> Events)
{
    /// <summary>
    /// The RPM were never brought to one load: what 100 kg do to them is then expected as large as it is on a small boat, not as
    /// what a correction leaves.
    /// </summary>
    public bool LoadUncorrected { get; init; }
}
