namespace FleetWake.Statistics.Drift;

/// <summary>What the drift estimator takes for granted about levels, steps, weather and gross errors.</summary>
/// <remarks>
/// The figures are recommendations from simulated fleets, common practice without a source otherwise; a fleet fits the noise
/// and the share of gross errors to its own trials. Immutable.
/// </remarks>
public sealed record DriftSettings
{
    /// <summary>The figures as recommended.</summary>
    public static DriftSettings Recommended { get; } = new();

    /// <summary>What is held possible about the noise of one trial.</summary>
    public NoiseNodes Noise { get; init; } = NoiseNodes.LogNormal(0.007, 0.2);

    /// <summary>Chance that a trial is a gross error [1], above 0 and at most 0.5: misread, capped, badly loaded.</summary>
    public double GrossChance { get; init; } = 0.03;

    /// <summary>Further standard deviation of a gross error, as a share of the RPM [1].</summary>
    public double GrossShare { get; init; } = 0.055;

    /// <summary>Where a new prop is expected to run, as a share of the middle of the rated band [1].</summary>
    public double LevelShare { get; init; } = 1.02;

    /// <summary>Standard deviation of that [1/min]: wide, for a wrong prop may be fitted.</summary>
    public double LevelSdRpm { get; init; } = 600;

    /// <summary>What a strike is expected to do [1/min].</summary>
    public double StrikeMeanRpm { get; init; } = 85;

    /// <summary>Standard deviation of that [1/min].</summary>
    public double StrikeSdRpm { get; init; } = 90;

    /// <summary>Standard deviation of what a repitch or a new baseline does [1/min]; its mean is nothing.</summary>
    public double RepitchSdRpm { get; init; } = 250;

    /// <summary>
    /// Standard deviation of how much faster a prop wears at the last trial than at the first [rpm per 100 h]; 0 for wear that
    /// goes on evenly. The drift is then that at the last trial.
    /// </summary>
    public double WearChangeSd { get; init; }

    /// <summary>Temperature [degC] to which the RPM is brought.</summary>
    public double ReferenceCelsius { get; init; } = 15;

    /// <summary>What one degree is expected to leave in the normalised RPM, as a share of it [1/degC].</summary>
    public double TemperatureMeanShare { get; init; }

    /// <summary>Standard deviation of that [1/degC].</summary>
    public double TemperatureSdShare { get; init; } = 2e-4;

    /// <summary>What 100 kg are expected to leave in the normalised RPM, as a share of it [1/(100 kg)].</summary>
    public double LoadMeanShare { get; init; }

    /// <summary>Standard deviation of that [1/(100 kg)].</summary>
    public double LoadSdShare { get; init; } = 5e-4;

    /// <summary>
    /// What 100 kg are expected to do to RPM that were never brought to one load, as a share of it [1/(100 kg)]: judgement, for a
    /// planing boat of one to two tonnes.
    /// </summary>
    public double UncorrectedLoadMeanShare { get; init; } = -8e-3;

    /// <summary>Standard deviation of that [1/(100 kg)].</summary>
    public double UncorrectedLoadSdShare { get; init; } = 5e-3;

    /// <summary>The belief about 100 kg for RPM that were brought to one load, or were not.</summary>
    internal (double MeanShare, double SdShare) LoadBelief(bool uncorrected) =>
        uncorrected ? (UncorrectedLoadMeanShare, UncorrectedLoadSdShare) : (LoadMeanShare, LoadSdShare);
}
