namespace FleetWake.Statistics.Life;

/// <summary>What happened at one age, and what share goes on beyond it.</summary>
/// <param name="Hours">The age [h].</param>
/// <param name="AtRisk">How many were being followed just before it.</param>
/// <param name="Ended">How many of them ended at it, one or more.</param>
/// <param name="Alive">The share of all that outlives this age [1], with Greenwood's standard error and its limits.</param>
public sealed record SurvivalStep(double Hours, int AtRisk, int Ended, Estimate Alive);
