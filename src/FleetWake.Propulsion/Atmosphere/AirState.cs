namespace FleetWake.Propulsion.Atmosphere;

/// <summary>The air that an engine breathes, as far as somebody read it. What is missing is null and widens the doubt.</summary>
/// <param name="Temperature">Air temperature.</param>
/// <param name="StationPressure">Pressure where the boat is, not reduced to sea level.</param>
/// <param name="RelativeHumidityFraction">Relative humidity [1], 0 to 1.</param>
public sealed record AirState(Temperature? Temperature, Pressure? StationPressure, double? RelativeHumidityFraction);
