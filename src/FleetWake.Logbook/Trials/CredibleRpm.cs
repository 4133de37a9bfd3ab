namespace FleetWake.Logbook.Trials;

/// <summary>Which wide-open-throttle readings can be believed at all. Common practice, no source: limiters sit some hundred RPM above the band, and no prop that moves a boat holds an engine to half of it.</summary>
public static class CredibleRpm
{
    private const double AboveTop = 1.25;
    private const double BelowBottom = 0.5;

    /// <summary>Whether a reading [RPM] lies near enough to the rated band [RPM] to be one.</summary>
    public static bool Is(double rpm, double bandLowRpm, double bandHighRpm) => rpm <= AboveTop * bandHighRpm && rpm >= BelowBottom * bandLowRpm;
}
