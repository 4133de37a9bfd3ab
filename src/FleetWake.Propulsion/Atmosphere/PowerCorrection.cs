namespace FleetWake.Propulsion.Atmosphere;

/// <summary>A factor that brings engine power to reference air, P_ref = P CF, with its doubt.</summary>
/// <param name="Factor">CF [1], with the doubt that the readings and what is missing of them leave.</param>
/// <param name="InValidity">CF lies within 0.93 to 1.07, where the formula may be used.</param>
public sealed record PowerCorrection(Uncertain Factor, bool InValidity);
