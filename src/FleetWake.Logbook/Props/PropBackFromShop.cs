using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A prop came back from the shop, with the numbers it came back with: they may differ from those asked for.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="PitchInches">Pitch that it came back with [in], when told.</param>
/// <param name="DiameterInches">Diameter that it came back with [in], when told.</param>
[StoredAs("prop_back_from_shop", 1)]
public sealed record PropBackFromShop(Entry Entry, string Prop, double? PitchInches, double? DiameterInches) : IFact;

/// <summary>Takes a prop back from the shop.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="PitchInches">Pitch that it came back with [in].</param>
/// <param name="DiameterInches">Diameter that it came back with [in].</param>
public sealed record TakePropBackFromShop(Stamp? Entry, string? Prop, double? PitchInches = null, double? DiameterInches = null) : ICommand<TakePropBackFromShop>
{
    /// <inheritdoc/>
    public static string Kind => "prop_back_from_shop";

    /// <inheritdoc/>
    public static TakePropBackFromShop Example => new(Examples.At(206, "2026-06-24T10:00:00"), Examples.Prop, 13, 11.4);

    /// <inheritdoc/>
    public static string Summary => "Records that a prop came back from the shop, and with which numbers.";

    /// <inheritdoc/>
    public static Decision Decide(TakePropBackFromShop command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var pitch = check.Maybe(command.PitchInches, "/pitchInches", 3, 40, "in");
        var diameter = check.Maybe(command.DiameterInches, "/diameterInches", 5, 30, "in");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropBackFromShop(entry!, prop, pitch, diameter))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
