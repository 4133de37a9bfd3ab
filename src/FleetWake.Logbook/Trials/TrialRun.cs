using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Trials;

/// <summary>A sea trial: timed runs with their readings and the conditions, all as read.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Throttle">Wide open, or part throttle on plane (which shows slip, never the band).</param>
/// <param name="Runs">The runs, in their order.</param>
/// <param name="Meters">Hour meters read with the trial.</param>
/// <param name="People">People aboard.</param>
/// <param name="LoadKilograms">Load beside people and fuel [kg].</param>
/// <param name="FuelPercent">Fuel level [%].</param>
/// <param name="AirTemperatureCelsius">Air temperature [deg C].</param>
/// <param name="PressureHectopascals">Station air pressure, not reduced to sea level [hPa].</param>
/// <param name="HumidityPercent">Relative humidity [%].</param>
/// <param name="WindKnots">Wind speed [kn].</param>
/// <param name="WaveHeightMetres">Height of waves [m].</param>
[StoredAs("trial_run", 1)]
public sealed record TrialRun(
    Entry Entry,
    string Boat,
    Throttle Throttle,
    IReadOnlyList<Run> Runs,
    IReadOnlyList<MeterReading> Meters,
    int? People,
    double? LoadKilograms,
    double? FuelPercent,
    double? AirTemperatureCelsius,
    double? PressureHectopascals,
    double? HumidityPercent,
    double? WindKnots,
    double? WaveHeightMetres) : IFact
{
    /// <summary>Trim of the engine as its gauge shows it [degrees], the same for all runs; out is positive.</summary>
    public double? TrimDegrees { get; init; }

    /// <summary>Depth of water under the runs [m].</summary>
    public double? WaterDepthMetres { get; init; }
}

/// <summary>One timed run: one speed, one heading, and each engine's tachometer.</summary>
/// <param name="Speed">Speed over ground, in <paramref name="SpeedUnit"/>.</param>
/// <param name="SpeedUnit">Unit of the speed.</param>
/// <param name="HeadingDegrees">Heading, true or magnetic but the same for all runs of a trial [degrees].</param>
/// <param name="Seconds">How long the readings were held [s], when timed.</param>
/// <param name="Tachometers">RPM of each engine.</param>
public sealed record Run(double Speed, SpeedUnit SpeedUnit, double HeadingDegrees, double? Seconds, IReadOnlyList<TachometerReading> Tachometers);

/// <summary>One engine's tachometer during a run.</summary>
/// <param name="Position">The position.</param>
/// <param name="Rpm">Engine speed as read [RPM].</param>
/// <param name="LimiterReached">The limiter held the engine: the reading is a lower bound, not a value.</param>
public sealed record TachometerReading(Position Position, double Rpm, bool LimiterReached)
{
    /// <summary>The prop drew air: a burst of RPM without speed; null when nobody said.</summary>
    public bool? Ventilated { get; init; }
}

/// <summary>An hour meter read with a trial.</summary>
/// <param name="Position">The position.</param>
/// <param name="Hours">What the meter showed [h].</param>
public sealed record MeterReading(Position Position, double Hours);

/// <summary>How far the throttle was open.</summary>
public enum Throttle
{
    /// <summary>Wide open.</summary>
    WideOpen,

    /// <summary>Part throttle, on plane.</summary>
    Part,
}

/// <summary>Units of speed on a log or a plotter.</summary>
public enum SpeedUnit
{
    /// <summary>Knot.</summary>
    Kn,

    /// <summary>Statute mile per hour.</summary>
    Mph,

    /// <summary>Kilometre per hour.</summary>
    KmPerH,

    /// <summary>Metre per second.</summary>
    MPerS,
}
