using BenchmarkDotNet.Attributes;
using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Benchmarks;

public class OpenWaterBenchmarks
{
    private readonly BladeShape _shape = InventedBoat.Baseline.Shape;
    private readonly OpenWaterCurve _curve = OpenWaterSeries.WageningenB.Curve(InventedBoat.Baseline.Shape);

    [Benchmark(Description = "cubics of a shape, 86 terms")]
    public OpenWaterCurve Curve() => OpenWaterSeries.WageningenB.Curve(_shape);

    [Benchmark(Description = "K_T, K_Q and four slopes")]
    public OpenWaterPoint Point() => _curve.At(1.03);
}
