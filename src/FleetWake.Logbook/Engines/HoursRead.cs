using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>Somebody read an engine's hour meter.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Hours">What the meter showed [h].</param>
[StoredAs("hours_read", 1)]
public sealed record HoursRead(Entry Entry, string Engine, double Hours) : IFact;

/// <summary>Records an hour-meter reading.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="Hours">What the meter showed [h].</param>
public sealed record ReadHours(Stamp? Entry, string? Engine, double? Hours) : ICommand<ReadHours>
{
    /// <inheritdoc/>
    public static string Kind => "hours_read";

    /// <inheritdoc/>
    public static ReadHours Example => new(Examples.At(4, "2026-05-08T18:00:00"), Examples.Engine, 231);

    /// <inheritdoc/>
    public static string Summary => "Records what an engine's hour meter showed.";

    /// <inheritdoc/>
    public static Decision Decide(ReadHours command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var engine = check.Id(command.Engine, "/engine");
        var hours = check.Number(command.Hours, "/hours", 0, CheckHours.Most, "h");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Engine(engine), new HoursRead(entry!, engine, hours))],
            [new Reference("/engine", StreamName.Engine(engine))]));
    }
}

/// <summary>Limits of an hour meter.</summary>
public static class CheckHours
{
    /// <summary>No outboard shows more [h]: eleven years without a stop.</summary>
    public const double Most = 99_999;

    /// <summary>An optional hour-meter reading.</summary>
    public static double? Hours(this Check check, double? hours, string field) => check.Maybe(hours, field, 0, Most, "h");
}
