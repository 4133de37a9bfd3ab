namespace FleetWake.Propulsion.Balance;

/// <summary>Where engine, prop and hull agree.</summary>
/// <param name="Rate">Engine rate.</param>
/// <param name="Speed">Speed through water.</param>
/// <param name="AdvanceRatio">J [1] there.</param>
/// <param name="Extrapolated">The series was not measured for this shape or this J.</param>
public readonly record struct WotPoint(EngineRate Rate, Speed Speed, double AdvanceRatio, bool Extrapolated);
