using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Tests.Trials;

/// <summary>An invented boat's trial that nothing is wrong with; tests say what differs.</summary>
internal static class ATrial
{
    /// <summary>Reference air with every reading, so that nothing is to be corrected.</summary>
    internal static AirState ReferenceAir { get; } = Air(25, 990, 0);

    /// <summary>30 deg C, 1013.25 hPa, 80 %: CF 1.02279 (power_correction_vectors.csv).</summary>
    internal static AirState SultryAir { get; } = Air(30, 1013.25, 0.8);

    internal static EngineData Engine { get; } = new()
    {
        Gear = new GearRatio(2),
        BandLow = EngineRate.FromRevolutionsPerMinute(5000),
        BandHigh = EngineRate.FromRevolutionsPerMinute(6000),
        TachometerStep = EngineRate.FromRevolutionsPerMinute(10),
    };

    internal static PropData Prop { get; } = new(Length.FromInches(17));

    /// <summary>5490 and 5510 rev/min, 32 and 30 kn, out and back.</summary>
    internal static TrialReading Usual { get; } =
        Of(Run(5490, 32, 40), Run(5510, 30, 220)) with { Conditions = new TrialConditions { Air = ReferenceAir } };

    internal static TrialReading Of(params RunReading[] runs) => new(runs, Usual?.Conditions ?? new(), Engine, Prop);

    internal static RunReading Run(double rpm, double? knots, double heading) => new(
        EngineRate.FromRevolutionsPerMinute(rpm), knots is { } v ? Speed.FromKnots(v) : null, heading)
    {
        Held = TimeSpan.FromSeconds(30),
    };

    /// <summary>The same change in each run.</summary>
    internal static TrialReading EachRun(this TrialReading trial, Func<RunReading, RunReading> change) =>
        trial with { Runs = [.. trial.Runs.Select(change)] };

    internal static TrialReading In(this TrialReading trial, AirState? air) =>
        trial with { Conditions = trial.Conditions with { Air = air } };

    internal static AirState Air(double celsius, double hectopascals, double humidity) =>
        new(Temperature.FromCelsius(celsius), Pressure.FromHectopascals(hectopascals), humidity);

    internal static CorrectedTrial Corrected(this TrialReading trial) => TrialCorrection.Of(trial);
}
