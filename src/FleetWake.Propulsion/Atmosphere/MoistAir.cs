namespace FleetWake.Propulsion.Atmosphere;

/// <summary>
/// Air with the water in it. Taken for any temperature from -40 to 60 deg C and any pressure from 300 to 1100 hPa; outside
/// these the reading is refused.
/// </summary>
public static class MoistAir
{
    private const double R_d = 287.05287; // [J/(kg K)] dry air, ISO 2533:1975
    private const double R_v = 461.523;   // [J/(kg K)] water vapour

    /// <summary>
    /// Saturation pressure of water vapour over water by Magnus' form, 610.94 Pa exp(17.625 t/(t + 243.04)); Alduchov and
    /// Eskridge 1996 (read in public copies that agree).
    /// </summary>
    /// <param name="temperature">Air temperature t, -40 to 60 deg C.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static Pressure SaturationPressure(Temperature temperature)
    {
        var t = Celsius(temperature);                                           // [deg C]
        return Pressure.FromPascals(610.94 * Math.Exp(17.625 * t / (t + 243.04))); // [Pa]
    }

    /// <summary>Partial pressure of water vapour, p_v = h p_sv(t).</summary>
    /// <param name="temperature">Air temperature, -40 to 60 deg C.</param>
    /// <param name="relativeHumidityFraction">Relative humidity h [1], 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public static Pressure VapourPressure(Temperature temperature, double relativeHumidityFraction) =>
        Pressure.FromPascals(Humidity(relativeHumidityFraction) * SaturationPressure(temperature).Pascals);

    /// <summary>Pressure less that of the water vapour, p_d = p - p_v: what of the air an engine can burn with.</summary>
    /// <param name="temperature">Air temperature, -40 to 60 deg C.</param>
    /// <param name="stationPressure">Total pressure p where the boat is, 300 to 1100 hPa.</param>
    /// <param name="relativeHumidityFraction">Relative humidity [1], 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public static Pressure DryPressure(
        Temperature temperature, Pressure stationPressure, double relativeHumidityFraction) => Pressure.FromPascals(
        Pascals(stationPressure) - VapourPressure(temperature, relativeHumidityFraction).Pascals);

    /// <summary>
    /// Density by ideal gases, (p - p_v)/(R_d T) + p_v/(R_v T). Within 0.07 % of <see cref="CipmDensity"/> from 0 to 40 deg C
    /// (computed here, a test holds it), which is far below what a barometer at a dock leaves open.
    /// </summary>
    /// <param name="temperature">Air temperature, -40 to 60 deg C.</param>
    /// <param name="stationPressure">Total pressure, 300 to 1100 hPa.</param>
    /// <param name="relativeHumidityFraction">Relative humidity [1], 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public static Density IdealGasDensity(
        Temperature temperature, Pressure stationPressure, double relativeHumidityFraction)
    {
        var p_v = VapourPressure(temperature, relativeHumidityFraction).Pascals; // [Pa]
        var p_d = Pascals(stationPressure) - p_v;                                // [Pa]
        var T = temperature.Kelvin;                                              // [K]
        return Density.FromKilogramsPerCubicMetre((p_d / (R_d * T)) + (p_v / (R_v * T)));
    }

    /// <summary>
    /// Density by the CIPM-2007 equation; Picard, Davis, Glaser and Fujii, Metrologia 45 (2008) 149-155, eq. (1) and
    /// appendix A, at a carbon dioxide fraction of 0.0004. Made for 15 to 27 deg C and 600 to 1100 hPa (range from memory);
    /// beyond these it is used here for an engine's air only, where it stays within 0.07 % of the ideal gases.
    /// </summary>
    /// <param name="temperature">Air temperature, -40 to 60 deg C.</param>
    /// <param name="stationPressure">Total pressure, 300 to 1100 hPa.</param>
    /// <param name="relativeHumidityFraction">Relative humidity [1], 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public static Density CipmDensity(Temperature temperature, Pressure stationPressure, double relativeHumidityFraction)
    {
        const double M_a = 28.96546e-3; // [kg/mol]
        const double M_v = 18.01528e-3; // [kg/mol]
        const double R = 8.314472;      // [J/(mol K)]
        var t = Celsius(temperature);             // [deg C]
        var p = Pascals(stationPressure);         // [Pa]
        var h = Humidity(relativeHumidityFraction); // [1]
        var T = temperature.Kelvin;               // [K]

        var p_sv = Math.Exp((1.2378847e-5 * T * T) - (1.9121316e-2 * T) + 33.93711047 - (6.3431645e3 / T)); // [Pa]
        var f = 1.00062 + (3.14e-8 * p) + (5.6e-7 * t * t);                                                  // [1]
        var x_v = h * f * p_sv / p;                                                                          // [1]
        var Z = Compressibility(t, T, p, x_v);                                                               // [1]
        return Density.FromKilogramsPerCubicMetre(
            p * M_a / (Z * R * T) * (1 - (x_v * (1 - (M_v / M_a)))));
    }

    private static double Compressibility(double t, double T, double p, double x_v)
    {
        var first = 1.58123e-6 - (2.9331e-8 * t) + (1.1043e-10 * t * t)
            + ((5.707e-6 - (2.051e-8 * t)) * x_v) + ((1.9898e-4 - (2.376e-6 * t)) * x_v * x_v); // [K/Pa]
        var second = 1.83e-11 - (0.765e-8 * x_v * x_v);                                         // [K2/Pa2]
        return 1 - (p / T * first) + (p / T * (p / T) * second);
    }

    private static double Celsius(Temperature temperature) =>
        Reject.Outside(-40, 60, "deg C", temperature.Celsius, nameof(temperature));

    private static double Pascals(Pressure stationPressure) =>
        Reject.Outside(30_000, 110_000, "Pa", stationPressure.Pascals, nameof(stationPressure));

    private static double Humidity(double relativeHumidityFraction) =>
        Reject.Outside(0, 1, "(a fraction)", relativeHumidityFraction, nameof(relativeHumidityFraction));
}
