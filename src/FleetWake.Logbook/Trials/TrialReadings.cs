using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Trials;

/// <summary>A recorded trial in the quantities that propulsion reckons with.</summary>
internal static class TrialReadings
{
    /// <summary>Mass of a person with what they carry [kg]. Common practice, no source; ISO 14946 takes 75 kg without it, from memory.</summary>
    private const double PersonKilograms = 80;

    /// <summary>The trial as one engine ran it; null when no tachometer was read at its position.</summary>
    public static TrialReading? Of(Position position, TrialRun trial, EngineCard? engine, GaugeError? gauge, double? pitchInches, TrialConditions? baseline, BoatResponse? response = null)
    {
        List<RunReading> runs =
        [
            .. from run in trial.Runs
               let read = run.Tachometers.FirstOrDefault(t => t.Position == position)
               where read is not null
               select new RunReading(EngineRate.FromRevolutionsPerMinute(read.Rpm), RunTrial.In(run.Speed, run.SpeedUnit), run.HeadingDegrees)
               {
                   Held = run.Seconds is { } s ? TimeSpan.FromSeconds(s) : null,
                   LimiterReached = read.LimiterReached,
                   Ventilated = read.Ventilated ?? false,
               },
        ];
        return runs.Count == 0
            ? null
            : new TrialReading(runs, Conditions(trial), Engine(engine, gauge), pitchInches is { } pitch ? new PropData(Length.FromInches(pitch)) : null)
            {
                PartThrottle = trial.Throttle == Throttle.Part,
                Baseline = baseline,
                Response = response ?? BoatResponse.Prior,
            };
    }

    /// <summary>What was written down of the conditions.</summary>
    public static TrialConditions Conditions(TrialRun trial) => new()
    {
        Air = new AirState(
            trial.AirTemperatureCelsius is { } t ? Temperature.FromCelsius(t) : null,
            trial.PressureHectopascals is { } p ? Pressure.FromHectopascals(p) : null,
            trial.HumidityPercent / 100),
        WaterDepth = trial.WaterDepthMetres is { } depth ? Length.FromMetres(depth) : null,
        TrimDegrees = trial.TrimDegrees,
        Load = LoadKilograms(trial) is { } load ? Mass.FromKilograms(load) : null,
    };

    /// <summary>People with what they carry, and load [kg]; null when neither was told.</summary>
    public static double? LoadKilograms(TrialRun trial) =>
        trial is { People: null, LoadKilograms: null } ? null : ((trial.People ?? 0) * PersonKilograms) + (trial.LoadKilograms ?? 0);

    private static EngineData Engine(EngineCard? engine, GaugeError? gauge) => new()
    {
        Gear = engine?.GearRatio is { } g ? new GearRatio(g) : null,
        BandLow = Rate(engine?.BandLowRpm),
        BandHigh = Rate(engine?.BandHighRpm),
        Breathing = engine?.AirIntake == AirIntake.Supercharged ? AirResponse.Supercharged : AirResponse.NaturallyAspirated,
        TachometerStep = Rate(engine?.TachometerStepRpm ?? TachometerSteps.UnknownRpm),
        TachometerError = gauge is { Error: { Value: >= -GaugeErrors.Most and <= GaugeErrors.Most } error } ? error : null,
    };

    private static EngineRate? Rate(double? rpm) => rpm is { } r ? EngineRate.FromRevolutionsPerMinute(r) : null;
}
