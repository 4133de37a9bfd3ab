using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Trials;
using FleetWake.Statistics.Drift.Fleet;

namespace FleetWake.Logbook.Fleet;

/// <summary>
/// Whether a fit of a fleet differs enough from the last recorded one to be recorded. A new number makes the findings of every boat
/// anew, and none is ever thrown away; what no finding would show is not worth that. The limits are judgement, no source: each is
/// a small part of the doubt that the finding states anyway.
/// </summary>
public static class FitMoved
{
    /// <summary>Total variation by which a group's prior may move [1]: no chance that it states moves by more.</summary>
    public const double Prior = 0.02;

    /// <summary>Share by which the median noise and the chance of a gross error may move [1].</summary>
    public const double Noise = 0.03;

    /// <summary>How far a gain may move, in its standard deviations [1].</summary>
    public const double Gain = 0.25;

    /// <summary>How far a month's share of the use may move [1].</summary>
    public const double Month = 0.1;

    /// <summary>A mounting of so many trials is given the fleet's word on itself, by the boat's other mountings too.</summary>
    public const int MemberTrials = 3;

    /// <summary>A fit is renewed after so many days, however little it moved: small moves add up.</summary>
    public const int Days = 30;

    /// <summary>Why a fit is to be recorded, in words; null when nothing moved enough to matter.</summary>
    /// <param name="last">The last one that was recorded.</param>
    /// <param name="now">The new one, fitted because new records have come.</param>
    /// <param name="fleet">The histories that the new one was fitted to.</param>
    public static string? Why(FleetPriorFitted last, FleetPriorFitted now, IReadOnlyCollection<BoatHistory> fleet)
    {
        ArgumentNullException.ThrowIfNull(last);
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(fleet);
        if (last.Method != now.Method) return "another method";
        if (last.Alarm.Threshold != now.Alarm.Threshold) return "another evidence raises the alarm";
        if (now.Entry.Happened() - last.Entry.Happened() >= TimeSpan.FromDays(Days)) return $"{Days} days have gone";
        return OfPriors(last.Drift, now.Drift) ?? OfNoise(last.Drift, now.Drift) ?? OfGains(last.Gains, now.Gains) ?? OfUse(last, now)
            ?? OfMembers(last, now, fleet);
    }

    private static string? OfPriors(FleetPriorFigures last, FleetPriorFigures now)
    {
        if (Distance(last.Unseen, now.Unseen) > Prior) return "what is expected of a group not seen yet moved";
        // A pair that nobody has bears on no finding.
        foreach (var key in last.Groups.Concat(now.Groups).Where(g => g.Mountings > 0).Select(g => (g.Material, g.Water)).Distinct())
        {
            if (Distance(Of(last, key), Of(now, key)) > Prior) return $"what is expected of {key.Material} in {key.Water} water moved";
        }

        return null;
    }

    /// <summary>A pair that it does not tell of is taken for one not seen yet.</summary>
    private static IReadOnlyList<int> Of(FleetPriorFigures figures, (string Material, string Water) key) =>
        figures.Groups.FirstOrDefault(g => (g.Material, g.Water) == key)?.Counts ?? figures.Unseen;

    /// <summary>Half of the summed differences of two distributions [1].</summary>
    private static double Distance(IReadOnlyList<int> a, IReadOnlyList<int> b)
    {
        if (a.Count != b.Count) return 1;
        var (ofA, ofB) = (a.Sum(c => (double)c), b.Sum(c => (double)c));
        return a.Zip(b).Sum(p => Math.Abs((p.First / ofA) - (p.Second / ofB))) / 2;
    }

    private static string? OfNoise(FleetPriorFigures last, FleetPriorFigures now) =>
        Off(last.Noise.MedianShare, now.Noise.MedianShare) ? "the scatter of a trial moved"
        : Off(last.GrossChance, now.GrossChance) ? "the chance of a gross error moved"
        : null;

    private static bool Off(double last, double now) => Math.Abs(now - last) > Noise * last;

    private static string? OfGains(IReadOnlyList<LearnedGain> last, IReadOnlyList<LearnedGain> now)
    {
        Uncertain Of(IReadOnlyList<LearnedGain> gains, string model) =>
            gains.FirstOrDefault(g => g.Model == model)?.Response().Gain ?? BoatResponse.Prior.Gain;
        foreach (var model in last.Concat(now).Select(g => g.Model).Distinct(StringComparer.Ordinal))
        {
            var (before, after) = (Of(last, model), Of(now, model));
            if (Math.Abs(after.Value - before.Value) > Gain * before.StandardDeviation) return $"how {model} answers the air moved";
        }

        return null;
    }

    private static string? OfUse(FleetPriorFitted last, FleetPriorFitted now) =>
        last.Season.MonthShares.Zip(now.Season.MonthShares).Any(m => Math.Abs(m.First - m.Second) > Month) ? "the use over the year moved" : null;

    private static string? OfMembers(FleetPriorFitted last, FleetPriorFitted now, IReadOnlyCollection<BoatHistory> fleet)
    {
        var known = last.Drift.Members.Select(m => m.Id).ToHashSet(StringComparer.Ordinal);
        var fresh = now.Drift.Members.Select(m => m.Id).Where(m => !known.Contains(m)).ToHashSet(StringComparer.Ordinal);
        if (fresh.Count == 0) return null;
        var priors = FleetPriors.Of(now);
        return fleet.SelectMany(h => h.Mountings.Where(m => fresh.Contains(m.Id)).Select(m => AssessMounting.Member(h, m, priors)))
            .Any(m => m?.Series.Trials.Count >= MemberTrials) ? "a prop with three trials was not in the last one" : null;
    }
}
