namespace FleetWake.Propulsion;

/// <summary>
/// Unit constants that are exact by definition: nautical mile and knot from the SI Brochure (BIPM, 8th edition
/// 2006, table 8; later editions list them no more); inch, foot, mile and pound from the international yard and pound
/// agreement of 1959; standard gravity from the 3rd CGPM (1901).
/// </summary>
internal static class ExactUnits
{
    internal const double InchInMetres = 0.0254;
    internal const double KnotInMetresPerSecond = 1852.0 / 3600.0;
    internal const double MilePerHourInMetresPerSecond = 0.44704; // 1609.344 / 3600, ends there
    internal const double KilometrePerHourInMetresPerSecond = 1.0 / 3.6;

    /// <summary>0.3048 m x 0.453 592 37 kg x 9.806 65 m/s2, written out because a product of three doubles is not exact.</summary>
    internal const double PoundForceFootInNewtonMetres = 1.3558179483314004;

    internal const double SecondsPerMinute = 60.0;
    internal const double MillimetresPerMetre = 1000.0;

    internal const double PascalsPerHectopascal = 100.0;
    internal const double PascalsPerKilopascal = 1000.0;
    internal const double PascalsPerInchOfMercury = 3386.388640341; // 13 595.1 x 9.806 65 x 0.0254 exactly
    internal const double KilogramsPerPound = 0.45359237;
    internal const double NewtonsPerPoundForce = 4.4482216152605;
    internal const double WattsPerKilowatt = 1000.0;
    internal const double WattsPerHorsepower = 745.69987158227022;
    internal const double WattsPerMetricHorsepower = 735.49875;
    internal const double CelsiusZeroInKelvin = 273.15;
}
