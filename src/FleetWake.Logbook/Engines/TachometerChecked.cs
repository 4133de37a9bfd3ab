using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Engines;

/// <summary>An engine's tachometer was held against an instrument. The record keeps readings as read; findings bring later ones right by it, and a gauge that shows other than before begins a new baseline.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="ShownRpm">What the tachometer showed [RPM].</param>
/// <param name="TrueRpm">What the instrument showed at the same time [RPM].</param>
[StoredAs("tachometer_checked", 1)]
public sealed record TachometerChecked(Entry Entry, string Engine, double ShownRpm, double TrueRpm) : IFact;

/// <summary>Records that a tachometer was held against an instrument.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine.</param>
/// <param name="ShownRpm">What the tachometer showed [RPM].</param>
/// <param name="TrueRpm">What the instrument showed at the same time [RPM].</param>
public sealed record CheckTachometer(Stamp? Entry, string? Engine, double? ShownRpm, double? TrueRpm) : ICommand<CheckTachometer>
{
    /// <inheritdoc/>
    public static string Kind => "tachometer_checked";

    /// <inheritdoc/>
    public static CheckTachometer Example => new(Examples.At(108, "2026-08-10T10:00:00"), Examples.Engine, 5100, 5020);

    /// <inheritdoc/>
    public static string Summary => "Records that a tachometer was held against an instrument: what each showed.";

    /// <inheritdoc/>
    public static Decision Decide(CheckTachometer command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var engine = check.Id(command.Engine, "/engine");
        var shown = check.Number(command.ShownRpm, "/shownRpm", CredibleRpm.Least, CredibleRpm.Most, "RPM");
        var real = check.Number(command.TrueRpm, "/trueRpm", CredibleRpm.Least, CredibleRpm.Most, "RPM");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Engine(engine), new TachometerChecked(entry!, engine, shown, real))],
            [new Reference("/engine", StreamName.Engine(engine))]));
    }
}
