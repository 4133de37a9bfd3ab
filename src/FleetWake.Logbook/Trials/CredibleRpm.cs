namespace FleetWake.Logbook.Trials;

/// <summary>Which wide-open-throttle readings can be believed at all. Common practice, no source: limiters sit some hundred RPM above the band, and no prop that moves a boat holds an engine to half of it.</summary>
public static class CredibleRpm
{
    /// <summary>No engine is read below this at wide open throttle or on plane [RPM].</summary>
    public const double Least = 300;

    /// <summary>No outboard is read above this [RPM].</summary>
    public const double Most = 12_000;

    private const double AboveTop = 1.25;
    private const double BelowBottom = 0.5;

    /// <summary>Whether a reading [RPM] lies near enough to the rated band [RPM] to be one.</summary>
    public static bool Is(double rpm, double bandLowRpm, double bandHighRpm) => rpm <= AboveTop * bandHighRpm && rpm >= BelowBottom * bandLowRpm;
}
