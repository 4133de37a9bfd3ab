using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Tests.Program;

/// <summary>Writes a dock's records with ids and counters of its own, as a device does.</summary>
/// <param name="device">Makes the ids of two docks differ.</param>
public sealed class DockRecords(short device = 1)
{
    private int count;

    /// <summary>A boat with engine and prop, ready for trials.</summary>
    public IEnumerable<ICommand> Outfit(string boat, string name)
    {
        yield return new RegisterBoat(At("2026-01-01T09:00:00"), boat, name, "old-mole", RunningFleet.Zone, "salt", ["single"]);
        yield return new RegisterEngine(At("2026-01-01T09:00:00"), "e-" + boat, "Skerry 50", 5000, 6000, 2.08, 50, "hp", 25, "pound_force_foot", 10);
        yield return new RegisterProp(At("2026-01-01T09:00:00"), "p-" + boat, 11.5, 13, 3, "aluminium", "right");
        yield return new FitEngine(At("2026-01-01T09:30:00"), boat, "single", "e-" + boat, 90);
        yield return new MountProp(
            At("2026-01-01T10:00:00"), boat, "single", "p-" + boat, 90, SealClearOfLine: true, ShaftGreased: true, HardwareInOrder: true, 25, "pound_force_foot", 1, NewCotterPin: true);
    }

    /// <summary>A two-way wide-open-throttle trial with a current of one knot.</summary>
    public RunTrial Trial(string boat, string at, double rpm, double hours, double speedKnots = 26) => new(
        At(at),
        boat,
        "wide_open",
        [
            new TrialRunSent(speedKnots - 1, "kn", 90, [new TachometerSent("single", rpm)], 20),
            new TrialRunSent(speedKnots + 1, "kn", 270, [new TachometerSent("single", rpm)], 20),
        ],
        [new MeterSent("single", hours)],
        People: 2);

    /// <summary>A stamp at a local time of the dock.</summary>
    public Stamp At(string local) => new(new Guid(++count, device, 7, new byte[8]), "mech-1", local, RunningFleet.Zone, count);
}
