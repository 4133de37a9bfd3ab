namespace FleetWake.Propulsion.Atmosphere;

/// <summary>The air that an engine breathes, as far as somebody read it. What is missing is null and widens the doubt.</summary>
/// <param name="Temperature">Air temperature.</param>
/// <param name="StationPressure">Pressure where the boat is, not reduced to sea level.</param>
/// <param name="RelativeHumidityFraction">Relative humidity [1], 0 to 1.</param>
public sealed record AirState(Temperature? Temperature, Pressure? StationPressure, double? RelativeHumidityFraction)
{
    /// <summary>Air of which nobody read anything.</summary>
    public static AirState Unknown { get; } = new(null, null, null);

    /// <summary>
    /// Height of the water above the sea, 0 to 5 km; null when not known. Used only where the station pressure is
    /// missing: then the standard pressure of this height stands in for it, and without a height a wide guess does.
    /// </summary>
    public Length? Altitude { get; init; }
}
