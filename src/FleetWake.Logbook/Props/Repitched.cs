using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>A shop changed a prop's pitch. The numbers are the shop's, which may differ from those asked for.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="PitchBeforeInches">Pitch as measured before [in], when measured.</param>
/// <param name="PitchAfterInches">Pitch after [in].</param>
/// <param name="DiameterAfterInches">Diameter after [in], when it was changed or measured.</param>
[StoredAs("repitched", 1)]
public sealed record Repitched(Entry Entry, string Prop, double? PitchBeforeInches, double PitchAfterInches, double? DiameterAfterInches) : IFact;

/// <summary>Records a repitch.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="PitchAfterInches">Pitch after [in].</param>
/// <param name="PitchBeforeInches">Pitch as measured before [in].</param>
/// <param name="DiameterAfterInches">Diameter after [in].</param>
public sealed record RepitchProp(
    Stamp? Entry,
    string? Prop,
    double? PitchAfterInches,
    double? PitchBeforeInches = null,
    double? DiameterAfterInches = null) : ICommand<RepitchProp>
{
    /// <inheritdoc/>
    public static string Kind => "repitched";

    /// <inheritdoc/>
    public static RepitchProp Example => new(Examples.At(7, "2026-06-20T16:00:00"), Examples.Prop, 13, 12.4);

    /// <inheritdoc/>
    public static string Summary => "Records that a shop changed a prop's pitch, with its readings.";

    /// <inheritdoc/>
    public static Decision Decide(RepitchProp command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var after = check.Number(command.PitchAfterInches, "/pitchAfterInches", 3, 40, "in");
        var before = check.Maybe(command.PitchBeforeInches, "/pitchBeforeInches", 3, 40, "in");
        var diameter = check.Maybe(command.DiameterAfterInches, "/diameterAfterInches", 5, 30, "in");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new Repitched(entry!, prop, before, after, diameter))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
