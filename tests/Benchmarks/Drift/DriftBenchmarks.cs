using BenchmarkDotNet.Attributes;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Benchmarks.Drift;

public class DriftBenchmarks
{
    private const int Mountings = 40;

    private readonly FleetMember[] _twelve = InventedMountings.Draw(Mountings, 12);
    private readonly SlopePrior _prior = SlopePrior.SoundOrWearing(0.15, 2, 12);

    [Benchmark(Description = "one mounting of twelve trials assessed", OperationsPerInvoke = Mountings)]
    public double Assess()
    {
        var sum = 0.0;
        foreach (var m in _twelve) sum += DriftEstimator.Assess(m.Series, _prior, DriftSettings.Recommended).RpmPer100Hours.Value;
        return sum;
    }

    [Benchmark(Description = "alarm followed through twelve trials", OperationsPerInvoke = Mountings)]
    public double Follow()
    {
        var sum = 0.0;
        foreach (var m in _twelve) sum += DriftAlarm.Follow(m.Series, DriftAlarm.Alternative, DriftSettings.Recommended)[^1].Log;
        return sum;
    }
}

public class FleetPriorBenchmarks
{
    private FleetMember[] _members = [];

    [Params(250, 500, 1000, 2000)]
    public int Mountings { get; set; }

    [GlobalSetup]
    public void Invent() => _members = InventedMountings.Draw(Mountings);

    [Benchmark(Description = "prior of a fleet fitted")]
    public FleetPrior Fit() => FleetPrior.Fit(_members, WearExpectation.Trade, DriftSettings.Recommended);
}
