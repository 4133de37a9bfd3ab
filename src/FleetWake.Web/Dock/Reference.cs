using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Web.Dock;

/// <summary>
/// What a page needs to bring a wide-open reading to reference air by itself, without signal, as the finding will:
/// <code>
/// t, p, h  = air of the trial [deg C, hPa, 0..1]; no correction without t; p and h from "missing" where not read
/// p_sv     = 6.1094 exp(17.625 t / (t + 243.04))                       [hPa]
/// CF       = 1.18 (990 / (p - h p_sv)) sqrt((t + 273) / 298) - 0.18
/// RPM_ref  = RPM_read / (1 + tachometerErrorPercent / 100) * CF^gain   only while lowestFactor &lt;= CF &lt;= highestFactor
/// sd of ln RPM_ref from the air's side = |ln CF| gainSd                (the gauge and the runs come on top)
/// </code>
/// Part throttle is never corrected. Reference air is 25 deg C and 990 hPa dry.
/// </summary>
/// <param name="TemperatureC">Temperature of reference air [deg C].</param>
/// <param name="PressureHPa">Its pressure [hPa].</param>
/// <param name="RelativeHumidity">Its humidity [1].</param>
/// <param name="Gain">g: share of a change of power that RPM follows, in logarithms [1]; learned for the engine's model where the fleet shows it.</param>
/// <param name="GainSd">One standard deviation of it.</param>
/// <param name="LowestFactor">CF below this is not used.</param>
/// <param name="HighestFactor">CF above this is not used.</param>
/// <param name="Missing">What is taken for pressure and humidity where nobody read them.</param>
internal sealed record Reference(
    double TemperatureC, double PressureHPa, double RelativeHumidity, double Gain, double GainSd, double LowestFactor, double HighestFactor, MissingAir Missing)
{
    /// <summary>The reference of an engine; null for one that hides the air.</summary>
    public static Reference? Of(EngineCard? engine, FleetPriors priors)
    {
        if (engine is null || engine.AirIntake == AirIntake.Supercharged) return null;
        var gain = priors.ResponseOf(engine.Model).Gain;
        var air = AirAssumptions.Of(AirState.Unknown);
        return new Reference(
            25, 990, 0, gain.Value, gain.StandardDeviation, PowerCorrections.LowestValid, PowerCorrections.HighestValid, new MissingAir(air.Pascals.Value / 100, air.HumidityFraction.Value));
    }
}

/// <summary>Air that nobody read.</summary>
/// <param name="PressureHPa">Station pressure [hPa].</param>
/// <param name="RelativeHumidity">Relative humidity [1].</param>
internal sealed record MissingAir(double PressureHPa, double RelativeHumidity);
