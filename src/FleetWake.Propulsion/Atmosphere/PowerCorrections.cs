namespace FleetWake.Propulsion.Atmosphere;

/// <summary>
/// Brings the power of a naturally aspirated spark-ignition engine to reference air of 25 deg C and 990 hPa dry:
/// P_ref = P CF.
/// </summary>
/// <remarks>
/// The formulas are for engines on a test bench, so that CF says how much power the air gave or took, and not how far the
/// RPM of a boat moved: that is CF^g. An engine whose control makes up for thin air follows them less, a mixture-limited
/// carburettor in other ways (common practice, no source): part of why the doubt of g is wide.
/// </remarks>
public static class PowerCorrections
{
    /// <summary>Lowest CF at which the formulas may be used [1]; SAE J1349 and ISO 1585 (from memory).</summary>
    public const double LowestValid = 0.93;

    /// <summary>Highest CF at which the formulas may be used [1]; SAE J1349 and ISO 1585 (from memory).</summary>
    public const double HighestValid = 1.07;

    /// <summary>CF from air as far as it was read, with the doubt that reading and guessing leave.</summary>
    /// <param name="air">
    /// The air; temperature -40 to 60 deg C, pressure 500 to 1100 hPa, humidity 0 to 1. What is missing is taken from
    /// <see cref="AirAssumptions"/>.
    /// </param>
    /// <param name="form">Which formula.</param>
    /// <returns>
    /// CF with one standard deviation, to first order in the doubts of the three readings, which are taken as independent.
    /// Outside 0.93 to 1.07 it is still told, but not in validity.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException">A reading outside its range; names it.</exception>
    public static PowerCorrection Of(AirState air, PowerCorrectionForm form = PowerCorrectionForm.SaeJ1349)
    {
        ArgumentNullException.ThrowIfNull(air);
        var assumed = AirAssumptions.Of(air);
        var (t, p, h) = (assumed.Celsius.Value, assumed.Pascals.Value, assumed.HumidityFraction.Value);
        var p_sv = MoistAir.SaturationPressure(Temperature.FromCelsius(t)).Pascals; // [Pa]
        var p_d = p - (h * p_sv);                                                     // [Pa]
        var T = t + 273;                                                              // [K] as both formulas round it
        var (CF, a, b) = form switch
        {
            PowerCorrectionForm.SaeJ1349 => SaeJ1349(p_d, T),
            PowerCorrectionForm.Iso1585 => Iso1585(p_d, T),
            _ => throw new ArgumentOutOfRangeException(nameof(form), form, "Must be one of the declared forms."),
        };

        // dp_sv/dt of Magnus' form.
        var slope = p_sv * 17.625 * 243.04 / ((t + 243.04) * (t + 243.04));                    // [Pa/K]
        var byTemperature = ((b / T) + (a * h * slope / p_d)) * assumed.Celsius.StandardDeviation; // [1]
        var byPressure = a / p_d * assumed.Pascals.StandardDeviation;                           // [1]
        var byHumidity = a / p_d * p_sv * assumed.HumidityFraction.StandardDeviation;           // [1]
        var sd = Math.Sqrt(
            (byTemperature * byTemperature) + (byPressure * byPressure) + (byHumidity * byHumidity));
        return new PowerCorrection(new Uncertain(CF, sd), CF is >= LowestValid and <= HighestValid);
    }

    /// <summary>
    /// CF = 1.180 (990 hPa/p_d) ((t + 273)/298)^0.5 - 0.18; SAE J1349 in its form of 1990, which takes friction for 15 % of
    /// the power (read in public transcriptions). Returns CF, -dCF/dln p_d and dCF/dln T.
    /// </summary>
    private static (double CF, double ByPressure, double ByTemperature) SaeJ1349(double p_d, double T)
    {
        var indicated = 1.180 * (99_000 / p_d) * Math.Sqrt(T / 298); // [1]
        return (indicated - 0.18, indicated, indicated / 2);
    }

    /// <summary>
    /// alpha = (99 kPa/p_d)^1.2 (T/298)^0.6; the form of ISO 1585 and UN Regulation 85 for spark ignition (from memory).
    /// Returns alpha, -dalpha/dln p_d and dalpha/dln T.
    /// </summary>
    private static (double CF, double ByPressure, double ByTemperature) Iso1585(double p_d, double T)
    {
        var alpha = Math.Pow(99_000 / p_d, 1.2) * Math.Pow(T / 298, 0.6); // [1]
        return (alpha, 1.2 * alpha, 0.6 * alpha);
    }
}
