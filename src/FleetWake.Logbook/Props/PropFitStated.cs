using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>Somebody stated what a prop fits on. A null says nothing; a later statement replaces an earlier one as a whole.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Spline">Id of the spline of its own hub; null with a hub kit.</param>
/// <param name="SplineTeeth">Teeth of that spline.</param>
/// <param name="HubKit">Id of the hub kit in it.</param>
/// <param name="ThrustWasher">Id of the thrust washer it wants.</param>
[StoredAs("prop_fit_stated", 1)]
public sealed record PropFitStated(Entry Entry, string Prop, string? Spline, int? SplineTeeth, string? HubKit, string? ThrustWasher) : IFact;

/// <summary>States what a prop fits on.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Spline">Id of the spline of its own hub.</param>
/// <param name="SplineTeeth">Teeth of that spline.</param>
/// <param name="HubKit">Id of the hub kit in it.</param>
/// <param name="ThrustWasher">Id of the thrust washer it wants.</param>
public sealed record StatePropFit(
    Stamp? Entry,
    string? Prop,
    string? Spline = null,
    int? SplineTeeth = null,
    string? HubKit = null,
    string? ThrustWasher = null) : ICommand<StatePropFit>
{
    /// <inheritdoc/>
    public static string Kind => "prop_fit_stated";

    /// <inheritdoc/>
    public static StatePropFit Example => new(Examples.At(200, "2026-05-01T08:20:00"), Examples.Prop, null, 13, "hub-21", "washer-4");

    /// <inheritdoc/>
    public static string Summary => "States which spline, hub kit and thrust washer a prop has or wants.";

    /// <inheritdoc/>
    public static Decision Decide(StatePropFit command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var prop = check.Id(command.Prop, "/prop");
        var spline = check.MaybeId(command.Spline, "/spline");
        var teeth = check.SplineTeeth(command.SplineTeeth, "/splineTeeth");
        var hub = check.MaybeId(command.HubKit, "/hubKit");
        var washer = check.MaybeId(command.ThrustWasher, "/thrustWasher");
        if (command is { Spline: null, SplineTeeth: null, HubKit: null, ThrustWasher: null })
            check.Refuse("/splineTeeth", "says_nothing", "give at least one of spline, splineTeeth, hubKit and thrustWasher");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Prop(prop), new PropFitStated(entry!, prop, spline, teeth, hub, washer))],
            [new Reference("/prop", StreamName.Prop(prop))]));
    }
}
