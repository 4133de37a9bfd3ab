namespace FleetWake.Propulsion;

/// <summary>How a mean speed was made, and so what current it is free of.</summary>
public enum MeanSpeedMethod
{
    /// <summary>One run; no current is removed.</summary>
    SingleRun,

    /// <summary>Out and back, (1,1)/2; a constant current is removed.</summary>
    DoubleRun,

    /// <summary>Out, back, out, (1,2,1)/4; a current linear in time is removed.</summary>
    ThreeRuns,

    /// <summary>Out, back, out, back, (1,3,3,1)/8, the mean of means; a current quadratic in time is removed.</summary>
    FourRuns,

    /// <summary>The mean of the two headings' means; a constant current is removed, a changing one only in part.</summary>
    MeanOfHeadings,

    /// <summary>The plain mean of runs that do not oppose each other; no current is removed.</summary>
    HeadingsNotOpposed,
}
