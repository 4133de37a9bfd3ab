using System.Globalization;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Logs;

/// <summary>The runs of a trial that a log holds.</summary>
/// <param name="Runs">The runs in the order of time, with their scatter; empty when the log has none, which <paramref name="Remarks"/> explain.</param>
/// <param name="LeftOut">Steady stretches that were not taken: part throttle, or headings that pair with none.</param>
/// <param name="Remarks">What was done and why, in words.</param>
public sealed record RecordedRuns(IReadOnlyList<RunReading> Runs, IReadOnlyList<Plateau> LeftOut, IReadOnlyList<string> Remarks)
{
    /// <summary>
    /// How far a run's course may be from the line of the trial [degrees]: half of what two runs may miss opposition by.
    /// </summary>
    public const double OffTheLineDegrees = TwoWayMean.ToleranceDegrees / 2;

    /// <summary>How many stretches are held against each other; a log of a season has thousands.</summary>
    public const int MostConsidered = 60;

    /// <summary>The runs of a log: typed ones as they are, else the wide-open stretches along the line that has runs both ways.</summary>
    /// <param name="log">The log.</param>
    /// <param name="rules">When a stretch of it counts as a run.</param>
    /// <param name="given">
    /// Engine rates for a log without RPM: one for all runs, or one for each in the order of time. Ignored, and said so, when
    /// the log has its own.
    /// </param>
    /// <exception cref="ArgumentException">As many rates are given as neither one nor the runs; or a rule is outside its range.</exception>
    public static RecordedRuns Of(TrialLog log, PlateauRules rules, IReadOnlyList<EngineRate> given)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(given);
        var remarks = new List<string>();
        if (given.Count > 0 && (log.TypedRuns.Count > 0 || log.Rates.Count > 0)) remarks.Add("the RPM given was not used: the file has its own");
        if (log.TypedRuns.Count > 0)
        {
            RpmApart(log.TypedRuns, remarks);
            return new RecordedRuns(log.TypedRuns, [], remarks);
        }

        var all = Plateaus.Find(log, rules);
        var open = all.Where(plateau => plateau.WideOpen).ToArray();
        if (open.Length > MostConsidered)
        {
            remarks.Add($"{open.Length} runs are more than a trial: the longest {MostConsidered} were looked at");
            open = [.. open.OrderByDescending(plateau => plateau.Held).Take(MostConsidered).OrderBy(plateau => plateau.Began)];
        }

        var taken = AlongTheLine(open);
        if (open.Length == 0 && log.Rates.Count + log.Track.Count > 0) remarks.Add(string.Create(
            CultureInfo.InvariantCulture, $"nowhere did RPM, speed and course hold for {rules.Shortest.TotalSeconds:0} s"));
        if (open.Length > taken.Length) remarks.Add($"{open.Length - taken.Length} of {open.Length} runs left out: their heading is neither the trial's nor its opposite");
        if (taken.Length > 1 && Array.Exists(taken, plateau => plateau.CourseDegrees is null))
        {
            remarks.Add("no course was logged with the speed, so that runs cannot be paired: only the longest was taken");
            taken = [taken.MaxBy(plateau => plateau.Held)!];
        }

        var rates = Rates(log, taken, given, remarks);
        var runs = rates.Length == 0 ? [] : taken.Zip(rates, (plateau, rate) => plateau.Run(rate, plateau.CourseDegrees ?? 0)).ToArray();
        RpmApart(runs, remarks);
        return new RecordedRuns(runs, [.. all.Except(taken)], remarks);
    }

    /// <summary>Says which runs' RPM to check when some are so far apart that no weather makes it.</summary>
    private static void RpmApart(IReadOnlyList<RunReading> runs, List<string> remarks)
    {
        if (runs.Count < 2) return;
        var rpm = runs.Select(run => run.Engine.RevolutionsPerMinute).ToArray();
        if (rpm.Max() - rpm.Min() <= TrialLimits.RpmImplausible * rpm.Average()) return;
        // Of two, nobody can tell which is wrong; of more, those far from the middle one.
        var middle = Sorted.Median(rpm.ToArray());
        var odd = Enumerable.Range(0, rpm.Length)
            .Where(i => rpm.Length > 2 && Math.Abs(rpm[i] - middle) > TrialLimits.RpmImplausible * middle).ToArray();
        if (odd.Length == 0 || 2 * odd.Length >= rpm.Length) odd = [.. Enumerable.Range(0, rpm.Length)];
        remarks.Add(string.Create(CultureInfo.InvariantCulture,
            $"check the RPM of {string.Join(" and of ", odd.Take(8).Select(i => string.Create(CultureInfo.InvariantCulture, $"run {i + 1} ({rpm[i]:0})")))}: the runs' RPM lie between {rpm.Min():0} and {rpm.Max():0}, further apart than wind or waves bring them"));
    }

    private static EngineRate[] Rates(TrialLog log, Plateau[] taken, IReadOnlyList<EngineRate> given, List<string> remarks)
    {
        if (log.Rates.Count > 0) return [.. taken.Select(plateau => plateau.Engine!.Value)];
        if (given.Count == 1) return [.. taken.Select(_ => given[0])];
        if (given.Count == taken.Length) return [.. given];
        if (given.Count > 0) throw new ArgumentException(
            $"{given.Count} engine rates are given for {taken.Length} runs: give one for all, or one for each run.", nameof(given));
        if (taken.Length > 0) remarks.Add($"the log has no RPM: give it, one for all of the {taken.Length} runs or one for each in the order of time");
        return [];
    }

    /// <summary>The stretches along the one line that was run both ways longest; all of them when none was.</summary>
    private static Plateau[] AlongTheLine(Plateau[] open)
    {
        var best = open;
        var longest = TimeSpan.Zero;
        foreach (var axis in open)
        {
            if (axis.CourseDegrees is not { } line) continue;
            var on = open.Where(plateau => plateau.CourseDegrees is { } c && Turn.Apart(c, line) <= OffTheLineDegrees).ToArray();
            var back = open.Where(plateau => plateau.CourseDegrees is { } c && Turn.Apart(c, line) >= 180 - OffTheLineDegrees).ToArray();
            var held = on.Concat(back).Aggregate(TimeSpan.Zero, (sum, plateau) => sum + plateau.Held);
            if (back.Length == 0 || held <= longest) continue;
            (longest, best) = (held, [.. open.Where(plateau => on.Contains(plateau) || back.Contains(plateau))]);
        }

        return best;
    }
}
