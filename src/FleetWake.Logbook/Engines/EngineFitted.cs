using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>An engine was hung on a boat.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position it hangs at.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
[StoredAs("engine_fitted", 1)]
public sealed record EngineFitted(Entry Entry, string Boat, Position Position, string Engine, double? Hours) : IMetered;

/// <summary>Notice on the engine's stream that it was hung on a boat; shares the entry id of <see cref="EngineFitted"/>, which is the truth of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
[StoredAs("engine_installed", 1)]
public sealed record EngineInstalled(Entry Entry, string Engine, string Boat, Position Position) : IFact;

/// <summary>Hangs an engine on a boat.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position it hangs at.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
public sealed record FitEngine(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    string? Engine,
    double? Hours = null) : ICommand<FitEngine>
{
    /// <inheritdoc/>
    public static string Kind => "engine_fitted";

    /// <inheritdoc/>
    public static FitEngine Example => new(Examples.At(3, "2026-05-01T09:00:00"), Examples.Boat, "single", Examples.Engine, 212);

    /// <inheritdoc/>
    public static string Summary => "Hangs an engine on a boat at a position.";

    /// <inheritdoc/>
    public static Decision Decide(FitEngine command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var engine = check.Id(command.Engine, "/engine");
        var hours = check.Hours(command.Hours, "/hours");
        return check.Decide(() => new Decision.Keep(
            [
                new Placed(StreamName.Boat(boat), new EngineFitted(entry!, boat, position, engine, hours)),
                new Placed(StreamName.Engine(engine), new EngineInstalled(entry!, engine, boat, position)),
            ],
            [new Reference("/boat", StreamName.Boat(boat)), new Reference("/engine", StreamName.Engine(engine))]));
    }
}
