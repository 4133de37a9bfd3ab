namespace FleetWake.Statistics.Life;

/// <summary>How the limits of a share that is still going are laid about it.</summary>
public enum SurvivalLimits
{
    /// <summary>
    /// Symmetric about log(-log S) (Kalbfleisch and Prentice 1980): stays within 0 and 1, and holds its level best of
    /// the three in small samples. The one to use.
    /// </summary>
    LogMinusLog,

    /// <summary>Symmetric about log S, cut off at 1: the usual default of statistics programs.</summary>
    Log,

    /// <summary>Symmetric about S, cut off at 0 and 1 (Greenwood 1926).</summary>
    Plain,
}
