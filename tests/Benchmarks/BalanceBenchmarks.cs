using BenchmarkDotNet.Attributes;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Balance;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Benchmarks;

public class BalanceBenchmarks
{
    private readonly WotBalance _balance = new(OpenWaterSeries.Gawn, InventedBoat.Baseline);
    private readonly ModelSpread _spread = ModelSpread.Of(InventedBoat.Baseline);
    private readonly EngineRate _cruise = EngineRate.FromRevolutionsPerMinute(4500);
    private readonly BoatState _otherAir = new() { EngineTorqueChange = -0.04 };
    private readonly BoatState _bentProp = new() { PitchChange = -0.05, EngineTorqueChange = -0.04, ResistanceChange = 0.1 };

    [Benchmark(Description = "full balance, prop as it was")]
    public WotPoint SolveSameProp() => _balance.Solve(_otherAir);

    [Benchmark(Description = "full balance, another pitch")]
    public WotPoint SolveOtherPitch() => _balance.Solve(_bentProp);

    [Benchmark(Description = "speed at a held rate")]
    public WotPoint Cruise() => _balance.SpeedAt(_cruise, _bentProp);

    [Benchmark(Description = "linear balance")]
    public BalanceShift Linear() => LinearBalance.Shift(_balance.Slopes, _bentProp);

    [Benchmark(Description = "full balance by 27 models")]
    public ShiftSpread Spread() => _spread.Shift(_bentProp);

    [Benchmark(Description = "calibration at a baseline")]
    public WotBalance Calibrate() => new(OpenWaterSeries.Gawn, InventedBoat.Baseline);
}
