using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>An engine became known, with what its owner's manual says of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine's id.</param>
/// <param name="Model">Model name for people.</param>
/// <param name="RatedPower">Rated power, in <paramref name="RatedPowerUnit"/>.</param>
/// <param name="RatedPowerUnit">Unit of the rated power.</param>
/// <param name="BandLowRpm">Lowest rated wide-open-throttle speed [RPM at the engine].</param>
/// <param name="BandHighRpm">Highest rated wide-open-throttle speed [RPM at the engine].</param>
/// <param name="GearRatio">Engine turns per prop turn.</param>
/// <param name="NutTorque">Propeller-nut torque of the manual, in <paramref name="NutTorqueUnit"/>; null means "see the manual".</param>
/// <param name="NutTorqueUnit">Unit of the nut torque.</param>
/// <param name="TachometerStepRpm">Smallest step the tachometer shows [RPM]; null when nobody said.</param>
[StoredAs("engine_registered", 1)]
public sealed record EngineRegistered(
    Entry Entry,
    string Engine,
    string Model,
    double? RatedPower,
    PowerUnit? RatedPowerUnit,
    double BandLowRpm,
    double BandHighRpm,
    double GearRatio,
    double? NutTorque,
    TorqueUnit? NutTorqueUnit,
    double? TachometerStepRpm) : IRegistration
{
    /// <summary>How it takes its air; null when nobody said, which counts as naturally aspirated.</summary>
    public AirIntake? AirIntake { get; init; }
}

/// <summary>How an engine takes its air.</summary>
public enum AirIntake
{
    /// <summary>By its own suction: its power follows the air's density.</summary>
    NaturallyAspirated,

    /// <summary>By a compressor or turbine: its control hides the air, and its RPM is not corrected for it.</summary>
    Supercharged,
}

/// <summary>Units of power on a manual's page.</summary>
public enum PowerUnit
{
    /// <summary>Kilowatt.</summary>
    Kw,

    /// <summary>Horsepower (550 ft.lbf/s).</summary>
    Hp,
}

/// <summary>Units of torque on a manual's page and on wrenches.</summary>
public enum TorqueUnit
{
    /// <summary>Newton metre.</summary>
    NewtonMetre,

    /// <summary>Pound-force foot.</summary>
    PoundForceFoot,
}
