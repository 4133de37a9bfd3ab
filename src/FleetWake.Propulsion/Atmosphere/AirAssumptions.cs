namespace FleetWake.Propulsion.Atmosphere;

/// <summary>
/// What is taken for the air where nobody read it, and how far a reading may be off. All doubts are common practice, no
/// source.
/// </summary>
/// <param name="Celsius">Temperature [deg C]; read +/- 1, missing 15 +/- 8: a boating season in a temperate place.</param>
/// <param name="Pascals">
/// Station pressure [Pa]; read +/- 1 hPa; missing the standard one at the altitude given +/- 8 hPa, the weather's; with no
/// altitude either 1000 +/- 20 hPa: most docks lie near the sea and some on lakes, none below it, so that what is not known goes
/// to one side. That is a mean height of some 110 m, and two deviations reach from a high at the sea to 450 m.
/// </param>
/// <param name="HumidityFraction">Relative humidity [1]; read +/- 0.05, missing 0.6 +/- 0.25.</param>
public readonly record struct AirAssumptions(Uncertain Celsius, Uncertain Pascals, Uncertain HumidityFraction)
{
    /// <summary>Fills in what is missing.</summary>
    /// <param name="air">The air; temperature -40 to 60 deg C, pressure 500 to 1100 hPa, humidity 0 to 1, altitude 0 to 5 km.</param>
    /// <exception cref="ArgumentOutOfRangeException">A reading outside its range; names it.</exception>
    public static AirAssumptions Of(AirState air)
    {
        ArgumentNullException.ThrowIfNull(air);
        return new AirAssumptions(
            air.Temperature is { } t
                ? new Uncertain(Reject.Outside(-40, 60, "deg C", t.Celsius, nameof(air.Temperature)), 1)
                : new Uncertain(15, 8),
            air.StationPressure is { } p
                ? new Uncertain(Reject.Outside(500, 1100, "hPa", p.Hectopascals, nameof(air.StationPressure)) * 100, 100)
                : air.Altitude is { } altitude ? new Uncertain(StandardPressure(altitude), 800) : new Uncertain(100_000, 2_000),
            air.RelativeHumidityFraction is { } h
                ? new Uncertain(Reject.Outside(0, 1, "(a fraction)", h, nameof(air.RelativeHumidityFraction)), 0.05)
                : new Uncertain(0.6, 0.25));
    }

    private static double StandardPressure(Length H)
    {
        _ = Reject.Outside(0, 5000, "m", H.Metres, nameof(AirState.Altitude));
        return StandardAtmosphere.PressureAt(H).Pascals;
    }
}
