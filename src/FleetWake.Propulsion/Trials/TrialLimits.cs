namespace FleetWake.Propulsion.Trials;

/// <summary>
/// From where on a doubt is told. Common practice, no source, where nothing else is said. All are strict: a trial that lies
/// on a limit is not flagged.
/// </summary>
public static class TrialLimits
{
    /// <summary>RPM of the two headings apart by more than this of their mean [1], and by more than a step of the gauge.</summary>
    public const double RpmSplit = 0.005;

    /// <summary>
    /// RPM of the runs apart by more than this of their mean [1]: a slip of the pen or a lever not all the way, not wind.
    /// </summary>
    public const double RpmImplausible = 0.2;

    /// <summary>A run held for less than this [s] has not settled.</summary>
    public const double SettledSeconds = 10;

    /// <summary>RPM scattering within a run by more than this [1].</summary>
    public const double RpmNoise = 0.01;

    /// <summary>Speed scattering within a run by more than this of itself [1], and by more than <see cref="SpeedNoiseKnots"/>.</summary>
    public const double SpeedNoise = 0.02;

    /// <summary>Speed scattering within a run by more than this [kn].</summary>
    public const double SpeedNoiseKnots = 0.5;

    /// <summary>
    /// A tachometer whose step leaves more than this of the RPM open, as one standard deviation [1]: most of the 0.5 % that
    /// an aluminium prop's RPM may drift in 100 hours (engineering judgement, no source).
    /// </summary>
    public const double CoarseStep = 0.004;

    /// <summary>Trim apart from the baseline's by more than this [degrees].</summary>
    public const double TrimDegrees = 2;

    /// <summary>Load apart from the baseline's by more than this [kg]: less than one grown person.</summary>
    public const double LoadKilograms = 50;

    /// <summary>Water no deeper than this [m] is shallow for a boat of this trade at any speed.</summary>
    public const double ShallowMetres = 3;

    /// <summary>
    /// Down to this depth [m], about the longest boat of this trade, water is shallow near the speed of its own longest
    /// wave: at a depth Froude number V/(g h)^0.5 of <see cref="LowestCriticalFroude"/> to <see cref="HighestCriticalFroude"/>.
    /// </summary>
    public const double CriticalMetres = 10;

    /// <summary>Lower end of the critical speeds, depth Froude number [1].</summary>
    public const double LowestCriticalFroude = 0.7;

    /// <summary>Upper end of the critical speeds, depth Froude number [1].</summary>
    public const double HighestCriticalFroude = 1.2;

    /// <summary>A station pressure below the standard one at this height [m] is told as altitude: 955 hPa.</summary>
    public const double AltitudeMetres = 500;

    /// <summary>Faster than the theoretical speed by more than this of it [1]: asked about, not dropped.</summary>
    public const double AboveTheoretical = 0.15;
}
