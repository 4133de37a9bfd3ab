using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>An engine came off a boat, and hangs nowhere since. Its prop comes off with it: the mounting ends.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Engine">The engine that came off, when somebody said which.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
[StoredAs("engine_removed", 1)]
public sealed record EngineRemoved(Entry Entry, string Boat, Position Position, string? Engine, double? Hours) : IMetered;

/// <summary>Notice on the engine's stream that it came off a boat; shares the entry id of <see cref="EngineRemoved"/>, which is the truth of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
[StoredAs("engine_taken_off", 1)]
public sealed record EngineTakenOff(Entry Entry, string Engine, string Boat, Position Position) : IFact;

/// <summary>Takes an engine off a boat.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Engine">The engine that came off.</param>
/// <param name="Hours">Hour-meter reading [h].</param>
public sealed record RemoveEngine(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    string? Engine = null,
    double? Hours = null) : ICommand<RemoveEngine>
{
    /// <inheritdoc/>
    public static string Kind => "engine_removed";

    /// <inheritdoc/>
    public static RemoveEngine Example => new(Examples.At(110, "2026-11-20T16:00:00"), Examples.Boat, "single", Examples.Engine, 118);

    /// <inheritdoc/>
    public static string Summary => "Takes an engine off a boat, and its prop with it.";

    /// <inheritdoc/>
    public static Decision Decide(RemoveEngine command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var engine = check.MaybeId(command.Engine, "/engine");
        var hours = check.Hours(command.Hours, "/hours");
        return check.Decide(() =>
        {
            List<Placed> facts = [new(StreamName.Boat(boat), new EngineRemoved(entry!, boat, position, engine, hours))];
            List<Reference> references = [new("/boat", StreamName.Boat(boat))];
            if (engine is not null)
            {
                facts.Add(new Placed(StreamName.Engine(engine), new EngineTakenOff(entry!, engine, boat, position)));
                references.Add(new Reference("/engine", StreamName.Engine(engine)));
            }

            return new Decision.Keep(facts, references);
        });
    }
}
