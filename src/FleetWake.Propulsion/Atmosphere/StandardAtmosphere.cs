namespace FleetWake.Propulsion.Atmosphere;

/// <summary>
/// The standard atmosphere of the troposphere, ISO 2533:1975 (constants from memory): temperature falls by 6.5 K a
/// kilometre from 288.15 K, pressure from 101 325 Pa, in dry air at rest. Valid from sea level to 11 km.
/// </summary>
/// <remarks>
/// Altitudes are geopotential; below 3 km a surveyed height differs from one by less than 2 m (computed here from
/// H = r z / (r + z), r = 6 356 766 m).
/// </remarks>
public static class StandardAtmosphere
{
    private const double T_0 = 288.15;      // [K]
    private const double p_0 = 101_325;     // [Pa]
    private const double Beta = 0.0065;     // [K/m]
    private const double R = 287.05287;     // [J/(kg K)]
    private const double g_n = 9.80665;     // [m/s2]
    private const double Top = 11_000;      // [m]
    private const double Exponent = g_n / (R * Beta); // [1] 5.25588

    private static readonly double s_topPressure = p_0 * Math.Pow((T_0 - (Beta * Top)) / T_0, Exponent); // [Pa]

    /// <summary>T = 288.15 K - 6.5 K/km H.</summary>
    /// <param name="altitude">Geopotential altitude H, 0 to 11 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">Above 11 km.</exception>
    public static Temperature TemperatureAt(Length altitude) => Temperature.FromKelvin(Kelvin(altitude));

    /// <summary>p = 101 325 Pa (T/288.15 K)^(g_n/(R 6.5 K/km)); the exponent is 5.25588.</summary>
    /// <param name="altitude">Geopotential altitude H, 0 to 11 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">Above 11 km.</exception>
    public static Pressure PressureAt(Length altitude) =>
        Pressure.FromPascals(p_0 * Math.Pow(Kelvin(altitude) / T_0, Exponent));

    /// <summary>rho = p/(R T).</summary>
    /// <param name="altitude">Geopotential altitude H, 0 to 11 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">Above 11 km.</exception>
    public static Density DensityAt(Length altitude) =>
        Density.FromKilogramsPerCubicMetre(PressureAt(altitude).Pascals / (R * Kelvin(altitude)));

    /// <summary>The altitude at which the standard atmosphere has a pressure; <see cref="PressureAt"/> turned round.</summary>
    /// <param name="pressure">The pressure, 226.32 hPa (11 km) to 1013.25 hPa (sea level).</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range: a high above the standard pressure has no
    /// altitude here, because a negative length is none.</exception>
    public static Length AltitudeAt(Pressure pressure)
    {
        var p = Reject.Outside(s_topPressure, p_0, "Pa", pressure.Pascals, nameof(pressure)); // [Pa]
        var T = T_0 * Math.Pow(p / p_0, 1 / Exponent);                                        // [K]
        return Length.FromMetres(Math.Max(0, (T_0 - T) / Beta));                              // [m]
    }

    private static double Kelvin(Length altitude) =>
        T_0 - (Beta * Reject.Outside(0, Top, "m", altitude.Metres, nameof(altitude)));
}
