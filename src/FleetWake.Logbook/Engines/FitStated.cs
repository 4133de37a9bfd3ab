using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Engines;

/// <summary>Somebody stated, from the manual, what fits on an engine. A null says nothing; a later statement replaces an earlier one as a whole.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Spline">Id of the spline of its prop shaft.</param>
/// <param name="SplineTeeth">Teeth of that spline.</param>
/// <param name="HubKit">Id of the hub kit that fits it.</param>
/// <param name="ThrustWasher">Id of the thrust washer that fits it.</param>
/// <param name="Rotation">Which way its prop turns, seen from astern, driving ahead.</param>
/// <param name="LargestDiameterInches">Largest prop that turns free under its plate [in].</param>
[StoredAs("engine_fit_stated", 1)]
public sealed record EngineFitStated(
    Entry Entry,
    string Engine,
    string? Spline,
    int? SplineTeeth,
    string? HubKit,
    string? ThrustWasher,
    Rotation? Rotation,
    double? LargestDiameterInches) : IFact;

/// <summary>States what fits on an engine.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Spline">Id of the spline of its prop shaft.</param>
/// <param name="SplineTeeth">Teeth of that spline.</param>
/// <param name="HubKit">Id of the hub kit that fits it.</param>
/// <param name="ThrustWasher">Id of the thrust washer that fits it.</param>
/// <param name="Rotation">Which way its prop turns, seen from astern, driving ahead.</param>
/// <param name="LargestDiameterInches">Largest prop that turns free under its plate [in].</param>
public sealed record StateEngineFit(
    Stamp? Entry,
    string? Engine,
    string? Spline = null,
    int? SplineTeeth = null,
    string? HubKit = null,
    string? ThrustWasher = null,
    [property: OneOf(typeof(Rotation))] string? Rotation = null,
    double? LargestDiameterInches = null) : ICommand<StateEngineFit>
{
    /// <inheritdoc/>
    public static string Kind => "engine_fit_stated";

    /// <inheritdoc/>
    public static StateEngineFit Example => new(Examples.At(201, "2026-05-01T08:25:00"), Examples.Engine, null, 13, "hub-21", "washer-4", "right", 12.5);

    /// <inheritdoc/>
    public static string Summary => "States which spline, hub kit, thrust washer, rotation and diameter fit an engine.";

    /// <inheritdoc/>
    public static Decision Decide(StateEngineFit command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var engine = check.Id(command.Engine, "/engine");
        var spline = check.MaybeId(command.Spline, "/spline");
        var teeth = check.SplineTeeth(command.SplineTeeth, "/splineTeeth");
        var hub = check.MaybeId(command.HubKit, "/hubKit");
        var washer = check.MaybeId(command.ThrustWasher, "/thrustWasher");
        var rotation = check.MaybeOneOf<Rotation>(command.Rotation, "/rotation");
        var diameter = check.Maybe(command.LargestDiameterInches, "/largestDiameterInches", 5, 30, "in");
        if (command is { Spline: null, SplineTeeth: null, HubKit: null, ThrustWasher: null, Rotation: null, LargestDiameterInches: null })
            check.Refuse("/splineTeeth", "says_nothing", "give at least one of spline, splineTeeth, hubKit, thrustWasher, rotation and largestDiameterInches");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Engine(engine), new EngineFitStated(entry!, engine, spline, teeth, hub, washer, rotation, diameter))],
            [new Reference("/engine", StreamName.Engine(engine))]));
    }
}

/// <summary>Limits of a prop shaft.</summary>
public static class CheckSpline
{
    /// <summary>An optional count of spline teeth: small outboards have about 9, the largest about 25. From memory, with room on both sides.</summary>
    public static int? SplineTeeth(this Check check, int? teeth, string field) => check.MaybeWhole(teeth, field, 4, 60, "teeth");
}
