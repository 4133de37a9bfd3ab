namespace FleetWake.Statistics.Rates;

/// <summary>What <see cref="EffectPool"/> says of effects that differ. All in the unit of the effects, unless said.</summary>
/// <param name="Mean">The mean effect mu; limits of Hartung and Knapp, Student's t of k - 1.</param>
/// <param name="PlainStandardError">Standard error of the mean if tau were known, 1 / sqrt(sum w).</param>
/// <param name="Tau">How far the true effects differ, their standard deviation, zero or more.</param>
/// <param name="TauSquaredStandardError">Standard error of tau^2 [unit squared], from the expected information.</param>
/// <param name="Q">Cochran's Q [1], chi-square of k - 1 degrees of freedom when all true effects are one.</param>
/// <param name="ShareBetween">I^2 [1], 0 to 1: how much of the scatter is true difference.</param>
/// <param name="Next">The true effect in a place like these that was not seen: mean mu, variance tau^2 + se^2, Student's
/// t of k - 2 (of 1 when k is 2).</param>
/// <param name="Each">Each effect drawn towards the mean, tau taken as known (best linear unbiased prediction), in
/// order.</param>
/// <param name="EachWithCare">The same, drawn less far since tau is itself a guess: the weight of the mean times
/// (k - 3) / (k - 1), nothing with three or fewer (Morris 1983). With equal doubts this is the James-Stein estimator.</param>
public sealed record PooledEffects(
    Estimate Mean,
    double PlainStandardError,
    double Tau,
    double TauSquaredStandardError,
    double Q,
    double ShareBetween,
    Estimate Next,
    IReadOnlyList<Estimate> Each,
    IReadOnlyList<Estimate> EachWithCare);
