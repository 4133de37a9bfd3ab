using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Statistics.Tests.Simulations;

/// <summary>
/// Fleets whose truth is not drawn from what the estimator believes: log-normal or uniform wear, some props that do not wear
/// at all, errors by Student's t, 8 % gross errors, strikes that nobody reported.
/// </summary>
internal sealed class InventedFleet(int beginning)
{
    private static readonly string[] Materials = ["aluminium", "stainless", "composite"];
    private static readonly string[] Waters = ["fresh", "coastal", "silty"];

    private readonly Draws _draws = new(beginning);

    /// <summary>Mountings with their true drift [rpm per 100 h], four to a boat.</summary>
    /// <param name="mountings">How many.</param>
    /// <param name="trials">Trials of each; null for 2 to 12.</param>
    /// <param name="uniform">Uniform wear instead of log-normal.</param>
    /// <param name="drift">The drift of all, or null to draw them.</param>
    public List<(FleetMember Member, double Drift)> Draw(int mountings, int? trials, bool uniform, double? drift = null)
    {
        var mean = Math.Exp(Math.Log(9) + (0.4 * _draws.Normal())); // [rpm per 100 h]
        var all = new List<(FleetMember, double)>();
        for (var boat = 0; all.Count < mountings; boat++)
        {
            var water = Waters[(int)_draws.Uniform(0, 3)];
            var noise = 0.007 * Math.Exp(0.2 * _draws.Normal());
            for (var k = 0; k < 4 && all.Count < mountings; k++)
            {
                var material = Materials[(int)_draws.Uniform(0, 3)];
                var wears = mean * (material == "stainless" ? 0.5 : 1) * (water == "silty" ? 1.6 : water == "coastal" ? 1.2 : 1);
                var truth = drift ?? (_draws.Uniform(0, 1) < 0.15 ? 0 : uniform ? wears * _draws.Uniform(0, 2) : wears * Math.Exp((0.6 * _draws.Normal()) - 0.18));
                all.Add((new($"m{all.Count:D4}", $"b{boat}", material, water, Series(trials ?? (int)_draws.Uniform(2, 13), Math.Min(truth, 75), noise)), Math.Min(truth, 75)));
            }
        }

        return all;
    }

    private DriftSeries Series(int trials, double drift, double noise)
    {
        var level = 5550 + (80 * _draws.Normal());
        var (week, hours) = (_draws.Uniform(0, 3), _draws.Uniform(1, 15));
        var (points, events) = (new List<DriftTrial>(), new List<DriftEvent>());
        for (var i = 0; i < trials; i++)
        {
            if (i > 0)
            {
                (week, hours) = (week + _draws.Uniform(3, 10), hours + _draws.Gamma(2, 28));
                var what = _draws.Uniform(0, 1);
                if (what < 0.02) (level, _) = (level + _draws.Uniform(0, 200), Told(events, week, StepKind.Strike));
                else if (what < 0.04) (level, _) = (level + (200 * _draws.Normal()), Told(events, week, StepKind.Repitch));
                else if (what < 0.045) level += _draws.Uniform(0, 150); // nobody told
            }

            var (air, load) = (_draws.Uniform(2, 30), 150 * _draws.Normal());
            var t5 = _draws.Normal() / Math.Sqrt(_draws.Gamma(2.5, 1) * 5 / 3); // variance 1
            var rpm = level + (drift * hours / 100) + (5500 * noise * t5) + (0.6 * (air - 15)) + (0.015 * load);
            if (_draws.Uniform(0, 1) < 0.08) rpm += _draws.Uniform(-500, 500);
            points.Add(new(week, hours, Math.Round(rpm), air, load));
        }

        return new(5000, 6000, points, events);
    }

    private static bool Told(List<DriftEvent> events, double week, StepKind kind)
    {
        events.Add(new(week - 0.5, kind));
        return true;
    }
}
