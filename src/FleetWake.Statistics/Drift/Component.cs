namespace FleetWake.Statistics.Drift;

/// <summary>
/// One component of the mixture: which trials are gross errors, and which noise node holds. Its likelihood of a drift s is
/// exp(Log - 1/2 (Xx s^2 - 2 Xu s)), without the weights of the node and of the gross errors.
/// </summary>
/// <param name="Node">The noise node.</param>
/// <param name="Flip1">A trial whose state differs from the base set's, or -1.</param>
/// <param name="Flip2">A second one, or -1.</param>
/// <param name="Gross">How many trials are gross errors.</param>
/// <param name="Log">log density of the trials at s = 0.</param>
/// <param name="Xx">q_xx: the precision of the drift.</param>
/// <param name="Xu">q_ux: precision times estimate.</param>
/// <param name="Level">Level at the last trial were the drift 0 [rpm].</param>
/// <param name="LevelPerSlope">What a drift of 1 adds to that level.</param>
/// <param name="LevelVariance">Variance of the level given the drift [rpm^2].</param>
internal readonly record struct Component(
    int Node, int Flip1, int Flip2, int Gross, double Log, double Xx, double Xu, double Level, double LevelPerSlope, double LevelVariance);
