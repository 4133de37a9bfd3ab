using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Statistics.Rates;
using FleetWake.Statistics.Scores;

namespace FleetWake.Logbook.Findings.Forecasts;

/// <summary>Were the intervals right? Forecasts of a fleet held against what came.</summary>
/// <param name="Made">The last day that the forecasts knew.</param>
/// <param name="NextTrial">The RPM of the next trial.</param>
/// <param name="Exit">Engine hours to the edge of the band. Exits that came early are told before those that are still to come, so that a young share looks worse than it is.</param>
/// <param name="Leaves">The chances of leaving the band within 100 engine hours.</param>
/// <param name="Sentence">The same in words.</param>
public sealed record ForecastCalibration(DateOnly Made, IntervalFigures NextTrial, IntervalFigures Exit, ChanceFigures Leaves, string Sentence)
{
    /// <summary>
    /// Level of the limits of a share [1]: wider than those of other figures, or a right method would be called wrong in one
    /// month of five.
    /// </summary>
    public const double LimitsLevel = 0.95;

    /// <summary>The figures of some checks.</summary>
    /// <param name="made">The last day that the forecasts knew.</param>
    /// <param name="checks">The checks, in any order.</param>
    public static ForecastCalibration Of(DateOnly made, IReadOnlyCollection<ForecastCheck> checks)
    {
        ArgumentNullException.ThrowIfNull(checks);
        var next = IntervalFigures.Of([.. checks.Select(c => c.NextTrial)]);
        var exit = IntervalFigures.Of([.. checks.Select(c => c.Exit).OfType<IntervalCheck>()]);
        var leaves = ChanceFigures.Of([.. checks.Select(c => c.Leaves).OfType<ChanceCheck>()]);
        return new ForecastCalibration(
            made, next, exit, leaves,
            $"Forecasts of {made:yyyy-MM-dd}. The next trial's RPM: {next.InWords()} Hours to the edge of the band: {exit.InWords()} {leaves.InWords()}");
    }
}

/// <summary>How often intervals held.</summary>
/// <param name="Level">Level claimed [1].</param>
/// <param name="Judged">How many can be judged.</param>
/// <param name="Held">How many of them held.</param>
/// <param name="Below">Where less came, or sooner.</param>
/// <param name="Above">Where more came, or later.</param>
/// <param name="Open">How many cannot be judged yet.</param>
/// <param name="Share">The share that held [1], with exact binomial limits; null when none can be judged.</param>
/// <param name="MeanWidth">Mean width of those that both ends are known of; null without one. In the unit of the interval.</param>
/// <param name="MeanScore">Their mean interval score, less is better, in the same unit: see <see cref="IntervalScore"/>. Null without one, or where what came is known on one side only.</param>
public sealed record IntervalFigures(double Level, int Judged, int Held, int Below, int Above, int Open, Limits? Share, double? MeanWidth, double? MeanScore)
{
    /// <summary>Whether the level claimed lies within the limits; null when none can be judged.</summary>
    public bool? InLine => Share is null ? null : Share.Low <= Level && Level <= Share.High;

    /// <summary>The figures of some checks.</summary>
    /// <param name="checks">The checks.</param>
    public static IntervalFigures Of(IReadOnlyCollection<IntervalCheck> checks)
    {
        ArgumentNullException.ThrowIfNull(checks);
        int Count(IntervalOutcome outcome) => checks.Count(c => c.Outcome == outcome);
        var judged = checks.Count - Count(IntervalOutcome.Open);
        var scored = checks.Where(c => c is { Outcome: not IntervalOutcome.Open, Low: not null, High: not null, Came: not null }).ToList();
        return new IntervalFigures(
            checks.FirstOrDefault()?.Level ?? WearDrift.Level,
            judged,
            Count(IntervalOutcome.Held),
            Count(IntervalOutcome.Below),
            Count(IntervalOutcome.Above),
            Count(IntervalOutcome.Open),
            BinomialLimits.Share(Count(IntervalOutcome.Held), judged, ForecastCalibration.LimitsLevel) is { } share ? new Limits(share.Value, share.Low, share.High) : null,
            scored.Count == 0 ? null : scored.Average(c => c.High!.Value - c.Low!.Value),
            scored.Count == 0 ? null : scored.Average(c => IntervalScore.Of(c.Low!.Value, c.High!.Value, c.Level, c.Came!.Value)));
    }

    internal string InWords()
    {
        var open = Open == 0 ? "" : $" {Open} cannot be judged yet.";
        if (Share is not { } share) return $"none can be judged yet.{(Open == 0 ? "" : $" {Open} {(Open == 1 ? "is" : "are")} open.")}";
        var line = InLine == true ? $"in line with the {100 * Level:0} % claimed" : share.Value < Level ? $"fewer than the {100 * Level:0} % claimed" : $"more than the {100 * Level:0} % claimed";
        return $"{Held} of {Judged} intervals held, {100 * share.Value:0} % ({100 * share.Low:0} to {100 * share.High:0} % at {100 * ForecastCalibration.LimitsLevel:0} %), {line}.{open}";
    }
}

/// <summary>How good stated chances were.</summary>
/// <param name="Judged">How many can be judged.</param>
/// <param name="Happened">How often it happened.</param>
/// <param name="Expected">How often it should have, by the chances.</param>
/// <param name="Open">How many cannot be judged yet.</param>
/// <param name="Brier">The Brier score, from 0 to 1, less is better; null when none can be judged.</param>
public sealed record ChanceFigures(int Judged, int Happened, double Expected, int Open, double? Brier)
{
    /// <summary>The figures of some checks.</summary>
    /// <param name="checks">The checks.</param>
    public static ChanceFigures Of(IReadOnlyCollection<ChanceCheck> checks)
    {
        ArgumentNullException.ThrowIfNull(checks);
        var judged = checks.Where(c => c.Happened is not null).ToList();
        return new ChanceFigures(
            judged.Count, judged.Count(c => c.Happened == true), judged.Sum(c => c.Chance), checks.Count - judged.Count, BrierScore.Of([.. judged.Select(c => (c.Chance, c.Happened!.Value))]));
    }

    internal string InWords() => Brier is not { } brier
        ? "Of no chance of leaving the band within 100 engine hours is it known what came."
        : $"Leaving the band within 100 engine hours: {Expected:0.0} expected of {Judged}, {Happened} came; Brier score {brier:0.00}.";
}
