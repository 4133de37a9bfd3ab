using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Engines;

/// <summary>An engine got a new hour meter. The engine's own hours go on from where they were.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="OldHours">What the old meter showed last [h]; null when it could not be read any more.</param>
/// <param name="NewHours">What the new meter shows [h].</param>
[StoredAs("meter_replaced", 1)]
public sealed record MeterReplaced(Entry Entry, string Engine, double? OldHours, double NewHours) : IFact;

/// <summary>Records that an engine got a new hour meter.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="NewHours">What the new meter shows [h].</param>
/// <param name="OldHours">What the old meter showed last [h]; left out when it could not be read any more.</param>
public sealed record ReplaceMeter(Stamp? Entry, string? Engine, double? NewHours, double? OldHours = null) : ICommand<ReplaceMeter>
{
    /// <inheritdoc/>
    public static string Kind => "meter_replaced";

    /// <inheritdoc/>
    public static ReplaceMeter Example => new(Examples.At(107, "2026-08-03T12:00:00"), Examples.Engine, 0, 371.5);

    /// <inheritdoc/>
    public static string Summary => "Records that an engine got a new hour meter: what the new one shows, and what the old one showed last.";

    /// <inheritdoc/>
    public static Decision Decide(ReplaceMeter command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var engine = check.Id(command.Engine, "/engine");
        var old = check.Hours(command.OldHours, "/oldHours");
        var shown = check.Number(command.NewHours, "/newHours", 0, CheckHours.Most, "h");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Engine(engine), new MeterReplaced(entry!, engine, old, shown))],
            [new Reference("/engine", StreamName.Engine(engine))]));
    }
}
