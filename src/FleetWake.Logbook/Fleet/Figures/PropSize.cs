using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>A size of prop, as spares are asked for. Diameter and pitch are rounded to a quarter inch, so that a shop's 12.6 is the 12.5 it stands for.</summary>
/// <param name="DiameterInches">Diameter [in].</param>
/// <param name="PitchInches">Pitch [in].</param>
/// <param name="Blades">Number of blades; null in a plan that any will do for.</param>
/// <param name="Material">Material; null in a plan that any will do for.</param>
/// <param name="Rotation">Which way it turns; null in a plan, which does not say.</param>
public sealed record PropSize(double DiameterInches, double PitchInches, int? Blades, PropMaterial? Material, Rotation? Rotation)
{
    private const double StepsPerInch = 4;

    /// <summary>The size in words, such as <c>13.25 x 13 aluminium, 3 blades, right</c>.</summary>
    public override string ToString() => string.Join(", ", new[]
    {
        $"{DiameterInches:0.##} x {PitchInches:0.##}{(Material is { } material ? " " + Words.Of(material) : "")}",
        Blades is { } blades ? $"{blades} blades" : "",
        Rotation is { } rotation ? Words.Of(rotation) : "",
    }.Where(part => part.Length > 0));

    /// <summary>The size that a prop went by at the moment of an entry, or goes by now; null while it is not registered.</summary>
    internal static PropSize? Of(PropRecord prop, Entry? at = null)
    {
        if (prop.Life.Registered is not { } registered) return null;
        var numbers = at is null ? PropNumbers.Of(prop.Facts) : PropNumbers.At(prop.Facts, prop.Order, at);
        return new PropSize(
            Rounded(numbers.DiameterInches ?? registered.DiameterInches), Rounded(numbers.PitchInches ?? registered.PitchInches),
            registered.Blades, registered.Material, registered.Rotation);
    }

    /// <summary>The size that a registered prop goes by now.</summary>
    public static PropSize Of(PropLife life) => life.Registered is { } registered
        ? new(
            Rounded(life.Numbers.DiameterInches ?? registered.DiameterInches), Rounded(life.Numbers.PitchInches ?? registered.PitchInches),
            registered.Blades, registered.Material, registered.Rotation)
        : throw new ArgumentException($"Prop {life.Prop} is not registered.", nameof(life));

    internal static PropSize Of(PropPlanned plan) => new(Rounded(plan.DiameterInches), Rounded(plan.PitchInches), plan.Blades, plan.Material, null);

    /// <summary>Whether a prop of this size does for a plan.</summary>
    internal bool DoesFor(PropSize plan) =>
        DiameterInches == plan.DiameterInches && PitchInches == plan.PitchInches
        && (plan.Blades is null || plan.Blades == Blades) && (plan.Material is null || plan.Material == Material);

    private static double Rounded(double inches) => Math.Round(inches * StepsPerInch, MidpointRounding.AwayFromZero) / StepsPerInch;
}
