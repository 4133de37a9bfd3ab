using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.Causes;

namespace FleetWake.Propulsion.Tests.Causes;

/// <summary>Invented boats with props, and slopes like those of boat C of wot_linear_coefficients.csv.</summary>
internal static class Tern
{
    internal static readonly ChangeDoubt DoubleRun = new(0.0075, 0.015);
    internal static readonly ChangeDoubt Known = new(0.002, 0.004);

    internal static readonly ResponseModel Console = new(new BalanceSlopes(-2.868, -4.433, 1.33, -1, 4.369, 5.047), 0.336, 1);

    internal static CauseCase Case(params WideOpenChange[] changes) => new()
    {
        Models = [Console],
        Baselines = [new("tern", "P1", Known), new("gull", "P2", Known)],
        WideOpen = changes,
    };

    /// <summary>One boat and its own prop alone.</summary>
    internal static CauseCase Alone(double lnRpm, double lnSpeed, int runs = 8) =>
        Case(Runs("tern", "P1", lnRpm, lnSpeed, runs)) with { Baselines = [new("tern", "P1", Known)] };

    /// <summary>Some double runs that all read alike.</summary>
    internal static WideOpenChange[] Runs(string boat, string prop, double lnRpm, double lnSpeed, int runs = 8) =>
        [.. Enumerable.Repeat(new WideOpenChange(boat, prop, lnRpm, lnSpeed, DoubleRun), runs)];

    /// <summary>What a cause of some size does to the first order.</summary>
    internal static (double LnRpm, double LnSpeed) Effect(Cause cause, double size)
    {
        var of = CauseResponse.Of(cause, Console);
        return (size * of.LnRpm, size * of.LnSpeed);
    }
}
