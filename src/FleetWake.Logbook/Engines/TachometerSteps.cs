namespace FleetWake.Logbook.Engines;

/// <summary>How finely a tachometer can be read.</summary>
public static class TachometerSteps
{
    /// <summary>Step assumed for a tachometer nobody described [RPM]. Common practice, no source: needle gauges are ruled in 50s or 100s.</summary>
    public const double UnknownRpm = 50;
}
