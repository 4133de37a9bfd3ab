using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>An engine was serviced.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Work">What was done.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
[StoredAs("engine_serviced", 1)]
public sealed record EngineServiced(Entry Entry, string Engine, IReadOnlyList<ServiceWork> Work, double? Hours) : IFact;

/// <summary>What a service does.</summary>
public enum ServiceWork
{
    /// <summary>Gear oil changed.</summary>
    GearOil,

    /// <summary>Engine oil changed.</summary>
    EngineOil,

    /// <summary>Water-pump impeller changed.</summary>
    WaterPump,

    /// <summary>Anodes changed.</summary>
    Anodes,

    /// <summary>Spark plugs changed.</summary>
    Plugs,

    /// <summary>Prop shaft greased.</summary>
    ShaftGreased,
}

/// <summary>Records a service.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Work">What was done.</param>
/// <param name="Hours">Hour-meter reading [h].</param>
public sealed record ServiceEngine(
    Stamp? Entry,
    string? Engine,
    [property: OneOf(typeof(ServiceWork))] IReadOnlyList<string>? Work,
    double? Hours = null) : ICommand<ServiceEngine>
{
    /// <inheritdoc/>
    public static string Kind => "engine_serviced";

    /// <inheritdoc/>
    public static ServiceEngine Example => new(Examples.At(203, "2026-05-01T08:40:00"), Examples.Engine, ["gear_oil", "anodes", "shaft_greased"], 212);

    /// <inheritdoc/>
    public static string Summary => "Records a service of an engine, and what was done.";

    /// <inheritdoc/>
    public static Decision Decide(ServiceEngine command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var engine = check.Id(command.Engine, "/engine");
        var named = check.List(command.Work, "/work", 1, 6);
        var work = named.Select((word, i) => check.OneOf<ServiceWork>(word, $"/work/{i}")).ToList();
        check.Once(named, "/work", "name each piece of work once");
        var hours = check.Hours(command.Hours, "/hours");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Engine(engine), new EngineServiced(entry!, engine, work, hours))],
            [new Reference("/engine", StreamName.Engine(engine))]));
    }
}
