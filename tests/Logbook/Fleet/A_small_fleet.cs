using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Fleets;

/// <summary>Boats b1, b2, ... of one dock, each with an engine and a prop and a trial every twenty days, wearing at a rate of its own.</summary>
internal static class A_small_fleet
{
    /// <summary>The records of some boats.</summary>
    /// <param name="drifts">Drift of each boat's prop [RPM per 100 engine hours].</param>
    /// <param name="trials">Trials of each.</param>
    public static IReadOnlyList<ICommand> Records(IReadOnlyList<double> drifts, int trials = 8) => [.. drifts.SelectMany((drift, i) => Boat($"b{i + 1}", drift, i, trials))];

    public static FleetLogs Logs(IEnumerable<ICommand> records)
    {
        var logs = new FleetLogs();
        foreach (var record in records) logs.Add(Fleet.Accepted(record));
        return logs;
    }

    public static IReadOnlyList<BoatHistory> Histories(IEnumerable<ICommand> records)
    {
        var logs = Logs(records);
        return [.. logs.Boats.Select(b => BoatHistory.Tell(logs.DossierOf(b)))];
    }

    private static IEnumerable<ICommand> Boat(string boat, double drift, int number, int trials)
    {
        yield return Dock.Boat(boat: boat);
        yield return Dock.Engine(engine: "e-" + boat);
        yield return Dock.Fitted(engine: "e-" + boat, boat: boat);
        yield return Dock.Prop(prop: "p-" + boat);
        yield return Dock.Mounted(prop: "p-" + boat, boat: boat);
        for (var i = 0; i < trials; i++)
        {
            // Scatter as of trials, the same on every run: no two boats alike.
            var scatter = 35 * Math.Sin(1 + (7.3 * number) + (2.9 * i) + (i * i * 0.37));
            var hours = 110 + (30 * i) + (number % 3);
            yield return Dock.Trial(Trialled.Day(i), Math.Round(5550 + (drift * (hours - 110) / 100) + scatter), hours) with
            {
                Boat = boat,
                Entry = Dock.At(Trialled.Day(i), $"trial {boat} {i}"),
            };
        }
    }
}
