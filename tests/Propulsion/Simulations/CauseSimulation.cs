using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.OpenWater;
using FleetWake.Propulsion.Tests.Balance;

namespace FleetWake.Propulsion.Tests.Simulations;

/// <summary>
/// Trials of boats with a known cause. The truth is the nonlinear balance over three series, several hull exponents and torque
/// slopes, of which the diagnosis knows neither; noise is that of double runs, 0.75 % of RPM and 1.5 % of speed.
/// </summary>
internal sealed class CauseSimulation(int seed)
{
    internal const double RpmNoise = 0.0075;
    internal const double SpeedNoise = 0.015;

    private static readonly double[] s_torqueSlopes = [-2, -1.5, -1, -0.7, -0.5];
    private static readonly Dictionary<(string, string), WotBaseline> s_boats = (
        from name in InventedBoats.Names
        from series in OpenWaterSeries.All
        select (name, series)).ToDictionary(x => (x.name, x.series.Name), x => InventedBoats.Boat(x.name, x.series, InventedBoats.Cubic));

    private readonly Random _random = new(seed);

    /// <summary>A size that a dock would want to know of.</summary>
    internal double PracticalSize(Cause cause)
    {
        var (low, high) = cause switch
        {
            Cause.PitchOrCupLoss => (0.03, 0.08),
            Cause.DiameterLoss => (0.015, 0.035),
            Cause.HubSlip => (0.03, 0.10),
            Cause.Ventilation => (0.10, 0.25),
            Cause.LighterLoad => (0.06, 0.15),
            Cause.EnginePower => (0.04, 0.10),
            Cause.HullOrLoad => (0.10, 0.30),
            _ => (0.002, 0.006), // section drag
        };
        return low + ((high - low) * _random.NextDouble());
    }

    /// <summary>A case of one cause, read by some double runs after a well-known baseline.</summary>
    internal CauseCase Case(Cause cause, double size, int runs, double? gainLearnedTo = null, int partThrottlePoints = 0, bool watched = false)
    {
        var truth = AnyBoat();
        var state = State(cause, size);
        return new CauseCase
        {
            Models = Models(truth, gainLearnedTo is { } sd ? new Uncertain(truth.Slopes.Gain + (sd * Normal()), sd) : new Uncertain(0.38, 0.10)),
            VentilationSeen = watched ? _random.NextDouble() < (cause == Cause.Ventilation ? 0.75 : 0.1) : null,
            Baselines = [new("tern", "P1", new ChangeDoubt(0, 0))],
            WideOpen = [.. Trials("tern", "P1", truth, state, runs)],
            PartThrottle = [.. Enumerable.Range(0, partThrottlePoints).Select(i => PartThrottle(truth, cause, state, 0.85 - (0.05 * i)))],
        };
    }

    /// <summary>Two boats alike, each with a prop of one stamp; four double runs of each, and four of each after the props were swapped.</summary>
    internal CauseCase Swapped(Cause cause, double size)
    {
        var truth = AnyBoat();
        var state = State(cause, size);
        var other = 0.015 * Math.Sqrt(2) * Normal(); // P2's true pitch over P1's, less one
        var (withProp, withBoat) = CauseFacts.TravelsWithProp(cause) ? (state, default(BoatState)) : (default, state);
        return new CauseCase
        {
            Models = Models(truth, new Uncertain(0.38, 0.10)),
            Baselines = [new("tern", "P1", new ChangeDoubt(0, 0)), new("gull", "P2", new ChangeDoubt(0, 0))],
            WideOpen =
            [
                .. Trials("tern", "P1", truth, state, 4),
                .. Trials("gull", "P2", truth, default, 4),
                .. Trials("tern", "P2", truth, withBoat with { PitchChange = withBoat.PitchChange + other }, 4),
                .. Trials("gull", "P1", truth, withProp with { PitchChange = withProp.PitchChange - other }, 4),
            ],
        };
    }

    /// <summary>A boat, a series, an exponent and a torque slope by lot.</summary>
    internal WotBalance AnyBoat()
    {
        var (name, series) = (InventedBoats.Names[_random.Next(4)], OpenWaterSeries.All[_random.Next(3)]);
        var (m, e) = (1 + (0.7 * _random.NextDouble()), s_torqueSlopes[_random.Next(s_torqueSlopes.Length)]);
        return new WotBalance(series, s_boats[(name, series.Name)] with
        {
            ResistanceExponent = m,
            Torque = e == -1 ? InventedBoats.Cubic : InventedBoats.Linear(e),
        });
    }

    /// <summary>What a dock knows of the boat: stamped size and speed, neither the series nor the true area of the blades.</summary>
    internal static IReadOnlyList<ResponseModel> Models(WotBalance truth, Uncertain gain) =>
        ResponseModels.About(new BladeShape(3, 0.55, truth.Baseline.Shape.PitchRatio), truth.AtBaseline.AdvanceRatio, gain);

    internal double Normal()
    {
        var (u, v) = (1 - _random.NextDouble(), _random.NextDouble());
        return Math.Sqrt(-2 * Math.Log(u)) * Math.Cos(2 * Math.PI * v); // Box and Muller 1958
    }

    /// <summary>Double runs in a state, each with its own noise.</summary>
    internal IEnumerable<WideOpenChange> Trials(string boat, string prop, WotBalance truth, BoatState state, int runs)
    {
        var now = truth.Solve(state);
        var shift = BalanceShift.Between(truth.Baseline, now, kappa: 1);
        return Enumerable.Range(0, runs).Select(_ => new WideOpenChange(
            boat, prop, shift.LnRate + (RpmNoise * Normal()), shift.LnSpeed + (SpeedNoise * Normal()), new ChangeDoubt(RpmNoise, SpeedNoise)));
    }

    internal static BoatState State(Cause cause, double size) => cause switch
    {
        Cause.PitchOrCupLoss => new BoatState { PitchChange = -size },
        Cause.DiameterLoss => new BoatState { DiameterChange = -size },
        Cause.HubSlip => new BoatState { HubSlip = size },
        Cause.Ventilation => new BoatState { ThrustLoss = size, TorqueLoss = 0.8 * size },
        Cause.LighterLoad => new BoatState { ResistanceChange = -size },
        Cause.EnginePower => new BoatState { EngineTorqueChange = -size },
        Cause.HullOrLoad => new BoatState { ResistanceChange = size },
        Cause.BladeRoughness => new BoatState { SectionDragChange = size },
        _ => default,
    };

    private PartThrottleChange PartThrottle(WotBalance truth, Cause cause, BoatState state, double share)
    {
        // At two thirds of the torque a hub that slips at full torque holds, and blades draw no air.
        var there = cause is Cause.HubSlip or Cause.Ventilation ? default : state;
        var rate = EngineRate.FromRevolutionsPerMinute(truth.Baseline.Rate.RevolutionsPerMinute * share);
        var (then, now) = (truth.SpeedAt(rate, default), truth.SpeedAt(rate, there));
        var noise = SpeedNoise * Math.Sqrt(2); // its own baseline point is as noisy
        return new PartThrottleChange("tern", "P1", new Uncertain(Math.Log(now.Speed.MetresPerSecond / then.Speed.MetresPerSecond) + (noise * Normal()), noise));
    }
}
