using System.Globalization;

namespace FleetWake.Propulsion;

/// <summary>
/// How fast a prop turns, behind the gearcase. A type of its own, so that a rate at the engine never passes for one at
/// the prop, which is slower by the gear ratio. Valid from zero up. <c>default</c> is a prop that stands.
/// </summary>
public readonly record struct PropRate
{
    private readonly double _revolutionsPerMinute;

    private PropRate(double revolutionsPerMinute) => _revolutionsPerMinute = revolutionsPerMinute;

    /// <summary>The rate [rev/min].</summary>
    public double RevolutionsPerMinute => _revolutionsPerMinute;

    /// <summary>The rate [rev/s]; 60 s a minute exactly (SI Brochure, 9th edition 2019, table 8).</summary>
    public double RevolutionsPerSecond => _revolutionsPerMinute / ExactUnits.SecondsPerMinute;

    /// <summary>Takes a rate in revolutions per minute.</summary>
    /// <param name="revolutionsPerMinute">The rate [rev/min], zero or more, finite.</param>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public static PropRate FromRevolutionsPerMinute(double revolutionsPerMinute) =>
        new(Reject.NotFiniteOrNegative(revolutionsPerMinute, revolutionsPerMinute));

    /// <summary>The rate of the prop that an engine drives: N_p = N_e / G.</summary>
    /// <param name="engine">Engine rate N_e.</param>
    /// <param name="gear">Gear ratio G, engine turns per prop turn.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gear"/> is <c>default</c>, or so small that the
    /// rate is not finite.</exception>
    public static PropRate Of(EngineRate engine, GearRatio gear)
    {
        var N_e = engine.RevolutionsPerMinute; // [rev/min]
        var G = gear.EnginePerPropTurn;        // [1]
        var N_p = N_e / G;                     // [rev/min]
        if (!(G > 0) || !double.IsFinite(N_p))
            throw new ArgumentOutOfRangeException(nameof(gear), gear, "No gear ratio was given, or one near zero.");

        return new PropRate(N_p);
    }

    /// <summary>The rate of the engine that drives this prop: N_e = N_p G.</summary>
    /// <param name="gear">Gear ratio G, engine turns per prop turn.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="gear"/> is <c>default</c>.</exception>
    public EngineRate AtEngine(GearRatio gear) => gear.EnginePerPropTurn > 0
        ? EngineRate.FromRevolutionsPerMinute(_revolutionsPerMinute * gear.EnginePerPropTurn)
        : throw new ArgumentOutOfRangeException(nameof(gear), gear, "No gear ratio was given.");

    /// <summary>The rate in rpm to three decimals, for a log line; never for a record.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{RevolutionsPerMinute:0.###} rpm at the prop");
}
