using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Atmosphere;

/// <summary>
/// Density of water at the surface by the international equation of state EOS-80 at one atmosphere: Millero and Poisson
/// 1981, Deep-Sea Research 28A, 625-629; UNESCO technical papers in marine science 44 (1983), eqs. (13) and (14), read in
/// several public copies that agree. Held by tests to its printed check values, and to the standard waters of ITTC
/// 7.5-02-01-03 (2011, from memory).
/// </summary>
/// <remarks>It is written in the temperature scale of 1968, which differs by 0.01 deg C at 40 deg C: less than 0.004 kg/m3.</remarks>
public static class WaterDensity
{
    /// <summary>Practical salinity of the open sea [1].</summary>
    public const double SeaSalinity = 35;

    /// <summary>Practical salinity taken for brackish water [1]: half of the sea's (common practice, no source); it may be 1 to 30.</summary>
    public const double BrackishSalinity = SeaSalinity / 2;

    /// <summary>Density of a kind of water: fresh at salinity 0, brackish at 17.5, salt at 35.</summary>
    /// <param name="water">The kind.</param>
    /// <param name="temperature">Its temperature, -2 to 40 deg C.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range, or not a declared kind.</exception>
    public static Density Of(Water water, Temperature temperature) => OfSalinity(
        water switch
        {
            Water.Fresh => 0,
            Water.Brackish => BrackishSalinity,
            Water.Salt => SeaSalinity,
            _ => throw new ArgumentOutOfRangeException(nameof(water), water, "Must be a declared kind of water."),
        },
        temperature);

    /// <summary>rho(S, t) = rho_w + A S + B S^1.5 + C S^2.</summary>
    /// <param name="practicalSalinity">Practical salinity S [1], 0 to 42.</param>
    /// <param name="temperature">Temperature t, -2 to 40 deg C; below its freezing point the water is taken for liquid.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside those ranges.</exception>
    public static Density OfSalinity(double practicalSalinity, Temperature temperature)
    {
        var S = Reject.Outside(0, 42, "(practical salinity)", practicalSalinity, nameof(practicalSalinity)); // [1]
        var t = Reject.Outside(-2, 40, "deg C", temperature.Celsius, nameof(temperature));                   // [deg C]
        var rho_w = 999.842594
            + (t * (6.793952e-2 + (t * (-9.095290e-3 + (t * (1.001685e-4 + (t * (-1.120083e-6 + (t * 6.536332e-9)))))))));
        var A = 8.24493e-1 + (t * (-4.0899e-3 + (t * (7.6438e-5 + (t * (-8.2467e-7 + (t * 5.3875e-9)))))));
        var B = -5.72466e-3 + (t * (1.0227e-4 + (t * -1.6546e-6)));
        const double C = 4.8314e-4;
        return Density.FromKilogramsPerCubicMetre(rho_w + (A * S) + (B * S * Math.Sqrt(S)) + (C * S * S)); // [kg/m3]
    }
}
