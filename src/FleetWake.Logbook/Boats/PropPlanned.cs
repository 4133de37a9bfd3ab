using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Boats;

/// <summary>Somebody decided which size of prop a position is to carry for a use: a line of the boat's prop plan. The last one told of a position and use counts.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Use">What the size is for.</param>
/// <param name="DiameterInches">Diameter, the first number [in].</param>
/// <param name="PitchInches">Pitch, the second number [in].</param>
/// <param name="Blades">Number of blades; null when any will do.</param>
/// <param name="Material">Material; null when any will do.</param>
[StoredAs("prop_planned", 1)]
public sealed record PropPlanned(
    Entry Entry,
    string Boat,
    Position Position,
    PropUse Use,
    double DiameterInches,
    double PitchInches,
    int? Blades,
    PropMaterial? Material) : IAtPosition;

/// <summary>What a size of prop is for.</summary>
public enum PropUse
{
    /// <summary>The boat's usual load.</summary>
    Usual,

    /// <summary>A full load.</summary>
    FullLoad,

    /// <summary>Few people and little gear.</summary>
    Light,

    /// <summary>Cold water and dense air.</summary>
    Winter,

    /// <summary>Towing.</summary>
    Towing,
}

/// <summary>Plans a size of prop for a use.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Use">What the size is for.</param>
/// <param name="DiameterInches">Diameter, the first number [in].</param>
/// <param name="PitchInches">Pitch, the second number [in].</param>
/// <param name="Blades">Number of blades, 2 to 7; left out when any will do.</param>
/// <param name="Material">Material; left out when any will do.</param>
public sealed record PlanProp(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    [property: OneOf(typeof(PropUse))] string? Use,
    double? DiameterInches,
    double? PitchInches,
    int? Blades = null,
    [property: OneOf(typeof(PropMaterial))] string? Material = null) : ICommand<PlanProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_planned";

    /// <inheritdoc/>
    public static PlanProp Example => new(Examples.At(106, "2026-05-01T11:00:00"), Examples.Boat, "single", "full_load", 11.5, 11, 3, "aluminium");

    /// <inheritdoc/>
    public static string Summary => "Plans which size of prop a position carries for a use: the boat's prop plan.";

    /// <inheritdoc/>
    public static Decision Decide(PlanProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var use = check.OneOf<PropUse>(command.Use, "/use");
        var diameter = check.Number(command.DiameterInches, "/diameterInches", 5, 30, "in");
        var pitch = check.Number(command.PitchInches, "/pitchInches", 3, 40, "in");
        var blades = check.MaybeWhole(command.Blades, "/blades", 2, 7, "blades");
        var material = check.MaybeOneOf<PropMaterial>(command.Material, "/material");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new PropPlanned(entry!, boat, position, use, diameter, pitch, blades, material))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
