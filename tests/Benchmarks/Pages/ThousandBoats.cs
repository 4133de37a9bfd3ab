using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;
using FleetWake.Logbook.Trials;

namespace FleetWake.Benchmarks.Pages;

/// <summary>An invented fleet of many boats with a season of trials each: what a page of all of them has to show.</summary>
internal static class ThousandBoats
{
    public const string Zone = "Pacific/Auckland";
    private static readonly string[] Docks = ["old-mole", "new-mole", "kittiwake-quay", "sallow-mere"];

    /// <summary>Registration, engine, prop, mounting, eight trials and now and then a strike of each boat.</summary>
    public static IEnumerable<ICommand> Records(int boats)
    {
        var chance = new Random(7);
        var count = 0;
        Stamp At(string local) => new(new Guid(++count, 99, 7, new byte[8]), "mech-1", local, Zone, count);
        for (var n = 0; n < boats; n++)
        {
            var (boat, steel) = ($"boat-{n:0000}", n % 5 == 0);
            yield return new RegisterBoat(At("2026-01-01T09:00:00"), boat, $"Seabird {n}", Docks[n % Docks.Length], Zone, "salt", ["single"]);
            yield return new RegisterEngine(At("2026-01-01T09:00:00"), "e-" + boat, steel ? "Ostrey 150" : "Brannoc 50", 5000, 6000, 2.08, 50, "hp", 25, "pound_force_foot", 10);
            yield return new RegisterProp(At("2026-01-01T09:00:00"), "p-" + boat, 11.5, 13, 3, steel ? "stainless" : "aluminium", "right");
            yield return new FitEngine(At("2026-01-01T09:30:00"), boat, "single", "e-" + boat, 90);
            yield return new MountProp(At("2026-01-01T10:00:00"), boat, "single", "p-" + boat, 90);
            var (level, drift) = (5450 + (400 * chance.NextDouble()), 30 * chance.NextDouble());
            for (var i = 0; i < 8; i++)
            {
                var rpm = Math.Round((level + (drift * i * 0.2) + (20 * (chance.NextDouble() - 0.5))) / 10) * 10;
                yield return new RunTrial(
                    At($"2026-{2 + i:00}-{1 + (n % 27):00}T10:00:00"),
                    boat,
                    "wide_open",
                    [new TrialRunSent(25, "kn", 90, [new TachometerSent("single", rpm)], 20), new TrialRunSent(27, "kn", 270, [new TachometerSent("single", rpm)], 20)],
                    [new MeterSent("single", 100 + (20 * i))],
                    People: 2);
            }

            if (n % 20 == 0) yield return new ReportStrike(At("2026-10-10T16:00:00"), boat, "single", "rock", n % 40 == 0 ? "bent" : "scuffed");
        }
    }
}
