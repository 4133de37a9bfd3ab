using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>One boat at wide-open throttle on a day that is known well: what a balance is calibrated with.</summary>
public sealed record WotBaseline
{
    /// <summary>Engine rate N_0, above zero.</summary>
    public required EngineRate Rate { get; init; }

    /// <summary>Speed through water V_0, above zero.</summary>
    public required Speed Speed { get; init; }

    /// <summary>Gear ratio G.</summary>
    public required GearRatio Gear { get; init; }

    /// <summary>Diameter of the prop, above zero.</summary>
    public required Length Diameter { get; init; }

    /// <summary>Blades, area ratio and pitch ratio of the prop.</summary>
    public required BladeShape Shape { get; init; }

    /// <summary>How the engine's torque changes with its rate.</summary>
    public required TorqueCurve Torque { get; init; }

    /// <summary>
    /// m = dlnR/dlnV [1] of the hull's resistance about V_0, 0.2 to 4. Planing hulls at full throttle 1.0 to 1.4 by Savitsky's method
    /// (computed for invented boats; see <c>Hull.Savitsky</c>), displacement above 2. One exponent never spans the hump.
    /// </summary>
    public double ResistanceExponent { get; init; } = 1.2;

    /// <summary>Wake fraction w = 1 - V_A/V [1], 0 to 0.5. Outboards in planing trim 0 to 0.05 (common practice, no source).</summary>
    public double WakeFraction { get; init; }

    /// <summary>Density of the water, above zero; sea water when nothing is said.</summary>
    public Density Water { get; init; } = Density.FromKilogramsPerCubicMetre(1025);

    internal void Check()
    {
        Positive(Rate.RevolutionsPerMinute, nameof(Rate), "rpm");
        Positive(Speed.MetresPerSecond, nameof(Speed), "m/s");
        Positive(Gear.EnginePerPropTurn, nameof(Gear), "engine turns a prop turn");
        Positive(Diameter.Metres, nameof(Diameter), "m");
        Positive(Shape.Blades, nameof(Shape), "blades");
        Positive(Torque.Rated.RevolutionsPerMinute, nameof(Torque), "rpm");
        Positive(Water.KilogramsPerCubicMetre, nameof(Water), "kg/m3");
        Positive(Torque.RelativeTorque(Rate), nameof(Rate), "of rated torque at this rate");
        if (ResistanceExponent is not (>= 0.2 and <= 4))
            throw new ArgumentOutOfRangeException(nameof(ResistanceExponent), ResistanceExponent, "Must lie in 0.2 to 4.");

        if (WakeFraction is not (>= 0 and <= 0.5))
            throw new ArgumentOutOfRangeException(nameof(WakeFraction), WakeFraction, "Must lie in 0 to 0.5.");
    }

    private static void Positive(double value, string name, string unit)
    {
        if (!(value > 0))
            throw new ArgumentOutOfRangeException(name, value, $"Must be above zero [{unit}].");
    }
}
