using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>Somebody measured a prop, on or off the boat.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="DiameterInches">Diameter as measured [in], when measured.</param>
/// <param name="PitchInchesByBlade">Pitch of each blade as measured [in], in the order in which they were measured.</param>
/// <param name="Tool">What it was measured with.</param>
[StoredAs("prop_measured", 1)]
public sealed record PropMeasured(Entry Entry, string Prop, double? DiameterInches, IReadOnlyList<double> PitchInchesByBlade, PitchTool Tool) : IFact;

/// <summary>What pitch is measured with.</summary>
public enum PitchTool
{
    /// <summary>A hand-held pitch gauge.</summary>
    PitchGauge,

    /// <summary>A set of pitch blocks.</summary>
    PitchBlocks,

    /// <summary>A shop's measuring machine.</summary>
    ShopMachine,
}

/// <summary>Records what a prop measured.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="PitchInchesByBlade">Pitch of each blade as measured [in], 2 to 7 of them.</param>
/// <param name="Tool">What it was measured with.</param>
/// <param name="DiameterInches">Diameter as measured [in].</param>
public sealed record MeasureProp(
    Stamp? Entry,
    string? Prop,
    IReadOnlyList<double>? PitchInchesByBlade,
    [property: OneOf(typeof(PitchTool))] string? Tool,
    double? DiameterInches = null) : ICommand<MeasureProp>
{
    /// <inheritdoc/>
    public static string Kind => "prop_measured";

    /// <inheritdoc/>
    public static MeasureProp Example => new(Examples.At(207, "2026-06-24T10:20:00"), Examples.Prop, [13.1, 12.9, 13.0], "pitch_gauge", 11.4);

    /// <inheritdoc/>
    public static string Summary => "Records the pitch of each blade, and the diameter, as measured.";

    /// <inheritdoc/>
    public static Decision Decide(MeasureProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var pitches = check.List(command.PitchInchesByBlade, "/pitchInchesByBlade", 2, 7)
            .Select((p, i) => check.Number(p, $"/pitchInchesByBlade/{i}", 3, 40, "in")).ToList();
        var tool = check.OneOf<PitchTool>(command.Tool, "/tool");
        var diameter = check.Maybe(command.DiameterInches, "/diameterInches", 5, 30, "in");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropMeasured(entry!, prop, diameter, pitches, tool))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
