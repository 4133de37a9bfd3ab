using BenchmarkDotNet.Attributes;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Benchmarks;

public class TrialBenchmarks
{
    private readonly TrialReading _reading = new(
        [Run(5420, 33.1, 40), Run(5440, 35.0, 221), Run(5425, 33.3, 41), Run(5435, 34.8, 219)],
        new TrialConditions
        {
            Air = new AirState(Temperature.FromCelsius(31), Pressure.FromHectopascals(1009), 0.7),
            Water = Water.Salt,
        },
        new EngineData
        {
            Gear = new GearRatio(2.0),
            BandLow = EngineRate.FromRevolutionsPerMinute(5000),
            BandHigh = EngineRate.FromRevolutionsPerMinute(6000),
            TachometerStep = EngineRate.FromRevolutionsPerMinute(10),
        },
        new PropData(Length.FromInches(17)) { Diameter = Length.FromInches(14.5), Blades = 3 });

    [Benchmark(Description = "trial of four runs corrected")]
    public CorrectedTrial Correct() => TrialCorrection.Of(_reading);

    private static RunReading Run(double rpm, double knots, double heading) =>
        new(EngineRate.FromRevolutionsPerMinute(rpm), Speed.FromKnots(knots), heading);
}
