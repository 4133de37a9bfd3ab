using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>Registers a prop by its tag and the numbers stamped on it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="DiameterInches">Diameter, the first number [in].</param>
/// <param name="PitchInches">Pitch, the second number [in].</param>
/// <param name="Blades">Number of blades.</param>
/// <param name="Material">What it is made of.</param>
/// <param name="Rotation">Which way it turns, seen from astern, driving ahead.</param>
public sealed record RegisterProp(
    Stamp? Entry,
    string? Prop,
    double? DiameterInches,
    double? PitchInches,
    int? Blades,
    [property: OneOf(typeof(PropMaterial))] string? Material,
    [property: OneOf(typeof(Rotation))] string? Rotation) : ICommand<RegisterProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_registered";

    /// <inheritdoc/>
    public static RegisterProp Example => new(Examples.At(5, "2026-05-01T08:10:00"), Examples.Prop, 11.5, 13, 3, "aluminium", "right");

    /// <inheritdoc/>
    public static string Summary => "Registers a prop: tag, diameter x pitch, blades, material, rotation.";

    /// <inheritdoc/>
    public static Decision Decide(RegisterProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var diameter = check.Number(command.DiameterInches, "/diameterInches", 5, 30, "in");
        var pitch = check.Number(command.PitchInches, "/pitchInches", 3, 40, "in");
        var blades = check.Whole(command.Blades, "/blades", 2, 7, "blades");
        var material = check.OneOf<PropMaterial>(command.Material, "/material");
        var rotation = check.OneOf<Rotation>(command.Rotation, "/rotation");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropRegistered(entry!, prop, diameter, pitch, blades, material, rotation))],
            []));
    }
}
