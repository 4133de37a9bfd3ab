using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Benchmarks.Drift;

/// <summary>Mountings of an invented fleet, four to a boat, the same on every machine.</summary>
internal static class InventedMountings
{
    private static readonly string[] Materials = ["aluminium", "stainless", "composite"];
    private static readonly string[] Waters = ["fresh", "coastal", "silty"];

    /// <param name="count">How many.</param>
    /// <param name="trials">Trials of each; null for 2 to 12.</param>
    internal static FleetMember[] Draw(int count, int? trials = null)
    {
        var chance = new Chance(7);
        var (members, water, noise) = (new FleetMember[count], "fresh", 0.0);
        for (var i = 0; i < count; i++)
        {
            if (i % 4 == 0) (water, noise) = (Waters[chance.Whole(0, 2)], 40 * Math.Exp(0.2 * chance.Normal()));
            members[i] = new($"m{i}", $"b{i / 4}", Materials[chance.Whole(0, 2)], water, Series(chance, trials ?? chance.Whole(2, 12), noise));
        }

        return members;
    }

    private static DriftSeries Series(Chance chance, int trials, double noise)
    {
        var (week, hours, level, drift) = (chance.Uniform(0, 3), chance.Uniform(1, 15), 5550 + (80 * chance.Normal()), chance.Weibull(1.2, 12));
        var (points, events) = (new List<DriftTrial>(), new List<DriftEvent>());
        for (var i = 0; i < trials; i++)
        {
            if (i > 0 && chance.Happens(0.08))
            {
                events.Add(new(week + 0.5, chance.Happens(0.5) ? StepKind.Strike : StepKind.Repitch));
                level += 80 + (60 * chance.Normal());
            }

            (week, hours) = (week + chance.Uniform(2, 9), hours + chance.Uniform(5, 55));
            var wrong = chance.Happens(0.03) ? chance.Uniform(-500, 500) : 0;
            var rpm = level + (drift * hours / 100) + (noise * chance.Normal()) + wrong;
            points.Add(new(week, hours, Math.Round(rpm), chance.Uniform(2, 30), 150 * chance.Normal()));
        }

        return new(5000, 6000, points, events);
    }
}
