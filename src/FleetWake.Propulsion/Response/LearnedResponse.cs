using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Response;

/// <summary>What an engine family has shown of itself.</summary>
/// <param name="Gain">g [1]: dlnN per dln of power.</param>
/// <param name="PitchElasticity">dlnN/dlnP [1], below zero.</param>
/// <param name="Correlation">Correlation of the two [1]: both hold the engine's torque slope.</param>
/// <param name="Steps">How many known changes it was learned from.</param>
public sealed record LearnedResponse(Uncertain Gain, Uncertain PitchElasticity, double Correlation, int Steps)
{
    /// <summary>h [1] of planing boats with its spread, over boats, series and exponents (computed).</summary>
    private static readonly Uncertain s_h = new(1.6, 0.06);

    /// <summary>What is assumed when nothing is learned: g 0.38 +/- 0.10, dlnN/dlnP -0.73 +/- 0.15 (computed over four boats, three series, torque slopes -2 to -0.5).</summary>
    public static LearnedResponse Prior { get; } = new(BoatResponse.Prior.Gain, new Uncertain(-0.73, 0.15), GainLearning.PriorCorrelation, 0);

    /// <summary>e = h - 1/g [1]: slope of the engine's torque over its RPM at wide-open throttle.</summary>
    public Uncertain TorqueSlope => new(
        s_h.Value - (1 / Gain.Value),
        Math.Sqrt(Square(s_h.StandardDeviation) + Square(Gain.StandardDeviation / Square(Gain.Value))));

    /// <summary>Share of the prior's variance of g that is left [1]: near one, the figures are the prior's and not the family's.</summary>
    public double PriorShare => Square(Gain.StandardDeviation / Prior.Gain.StandardDeviation);

    /// <summary>The response that trials of this family are corrected by.</summary>
    public BoatResponse Response => new(Gain, BoatResponse.Prior.Kappa);

    private static double Square(double x) => x * x;
}
