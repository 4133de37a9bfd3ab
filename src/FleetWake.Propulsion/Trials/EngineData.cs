namespace FleetWake.Propulsion.Trials;

/// <summary>What is known of the engine under trial; the owner's manual says most of it.</summary>
public sealed record EngineData
{
    /// <summary>Gear ratio; null when not known (no slip then).</summary>
    public GearRatio? Gear { get; init; }

    /// <summary>Lowest rated wide-open-throttle rate.</summary>
    public EngineRate? BandLow { get; init; }

    /// <summary>Highest rated wide-open-throttle rate.</summary>
    public EngineRate? BandHigh { get; init; }

    /// <summary>Rated power at the prop shaft.</summary>
    public Power? RatedPower { get; init; }

    /// <summary>How its power follows the air.</summary>
    public AirResponse Breathing { get; init; }

    /// <summary>Smallest step that the tachometer shows; null when nobody said.</summary>
    public EngineRate? TachometerStep { get; init; }

    /// <summary>
    /// What the tachometer shows over what is true, less one [1], with its doubt: +0.02 reads 2 % high. Null when it was never
    /// held against an instrument; then only comparisons with itself are sharp.
    /// </summary>
    public Uncertain? TachometerError { get; init; }
}

/// <summary>How an engine's power follows the air.</summary>
public enum AirResponse
{
    /// <summary>As a naturally aspirated spark-ignition engine: power follows the air's density.</summary>
    NaturallyAspirated,

    /// <summary>Supercharged: its control hides the air, so that no correction applies.</summary>
    Supercharged,
}
