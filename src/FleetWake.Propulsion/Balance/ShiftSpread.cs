namespace FleetWake.Propulsion.Balance;

/// <summary>A shift from the baseline as several models have it.</summary>
/// <param name="LnRate">ln(N/N_0) [1], mean and spread.</param>
/// <param name="LnSpeed">ln(V/V_0) [1], mean and spread.</param>
/// <param name="Covariance">Covariance of the two over the models [1].</param>
public readonly record struct ShiftSpread(Uncertain LnRate, Uncertain LnSpeed, double Covariance);
