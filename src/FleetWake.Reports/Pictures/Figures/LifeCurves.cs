using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet.Figures;
using FleetWake.Statistics.Life;

namespace FleetWake.Reports.Pictures.Figures;

/// <summary>The share of props that outlives each age, by group, with limits.</summary>
/// <param name="Title">What it is of.</param>
/// <param name="Statement">How long half of each group last.</param>
/// <param name="Curves">One a group that is large enough, the longest-lived first; four at the most.</param>
/// <param name="ToHours">The greatest age shown [h].</param>
/// <param name="Level">Level of the limits [1].</param>
/// <param name="Note">Which groups have no curve; null when all have.</param>
public sealed record LifeCurves(string Title, string Statement, IReadOnlyList<LifeCurve> Curves, double ToHours, double Level, string? Note) : Picture(Title, Statement)
{
    /// <summary>More are not told apart in grey.</summary>
    public const int MostCurves = 4;

    private const int BeforeFirst = 24; // samples of the limits before the first end

    /// <summary>The curves of a fleet by material.</summary>
    /// <param name="fleet">The fleet.</param>
    /// <param name="question">What ends a life.</param>
    public static LifeCurves? ByMaterial(FleetRecord fleet, LifeQuestion question = LifeQuestion.UsedUp) =>
        Of(PropLives.Lifetimes(fleet).Lives, l => l.Material is { } m ? Words.Of(m) : null, "by material", question);

    /// <summary>The curves of a fleet by the water in which most of a prop's hours were run.</summary>
    /// <param name="fleet">The fleet.</param>
    /// <param name="question">What ends a life.</param>
    public static LifeCurves? ByWater(FleetRecord fleet, LifeQuestion question = LifeQuestion.UsedUp) =>
        Of(PropLives.Lifetimes(fleet).Lives, l => l.Water is { } w ? $"{Words.Of(w)} water" : null, "by water", question);

    /// <summary>The curves of some lives; null where no group is large enough.</summary>
    /// <param name="lives">The lives.</param>
    /// <param name="groupOf">The group of a life; null for one that stands in none.</param>
    /// <param name="by">How they are grouped, as a title ends.</param>
    /// <param name="question">What ends a life.</param>
    public static LifeCurves? Of(IReadOnlyList<PropLifetime> lives, Func<PropLifetime, string?> groupOf, string by, LifeQuestion question)
    {
        ArgumentNullException.ThrowIfNull(lives);
        ArgumentNullException.ThrowIfNull(groupOf);
        var groups = lives.Where(l => groupOf(l) is not null).GroupBy(l => Phrases.Plain(groupOf(l)!), StringComparer.Ordinal).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).ToList();
        var large = groups.Where(g => g.Count() >= LifeGroup.FewestProps).Take(MostCurves).ToList();
        if (large.Count == 0) return null;
        var curves = large.Select(g => Curve(g.Key, [.. g.Select(l => new Lifetime(l.EngineHours, l.HasEnded(question)))])).ToList();
        var small = groups.Except(large).Select(g => $"{Fitting.Name(g.Key)} ({Phrases.Count(g.Count(), "prop")})").ToList();
        var end = question == LifeQuestion.UsedUp ? "used up" : "worn";
        return new LifeCurves(
            $"How long props last until they are {end}, {by}",
            $"{string.Join(" ", curves.Select(c => Sentence(c, end)))} Limits hold {Phrases.Percent(Limits.Level)}.",
            [.. curves.OrderByDescending(c => c.MedianHours ?? double.MaxValue).ThenByDescending(c => c.Steps[^1].Alive)],
            Math.Max(50, curves.Max(c => c.Steps[^1].Hours)),
            Limits.Level,
            small.Count == 0 ? null : $"too few to draw: {Fitting.List(small, 3)}");
    }

    private static LifeCurve Curve(string group, IReadOnlyCollection<Lifetime> lives)
    {
        var curve = KaplanMeier.Of(lives, Limits.Level)!;
        // Before the first end it is all of them, of fewer and fewer; and it goes on level to the oldest that was watched.
        var first = curve.Steps.Count == 0 ? curve.FollowedToHours : curve.Steps[0].Hours;
        List<LifeStep> steps = [new(0, 1, curve.At(0)?.Low ?? 1, 1)];
        for (var i = 1; i < BeforeFirst; i++)
            if (curve.At(first * i / BeforeFirst) is { } before) steps.Add(new(first * i / BeforeFirst, 1, before.Low, 1));
        steps.AddRange(curve.Steps.Select(s => new LifeStep(s.Hours, s.Alive.Value, s.Alive.Low, s.Alive.High)));
        if (curve.FollowedToHours > steps[^1].Hours) steps.Add(steps[^1] with { Hours = curve.FollowedToHours });
        var median = curve.HoursUntil(0.5);
        return new LifeCurve(group, curve.Count, curve.Ended, steps, median.Hours, median.LowHours, median.HighHours);
    }

    private static string Sentence(LifeCurve curve, string end)
    {
        var of = $"{Fitting.Name(curve.Group)}, {Phrases.Count(curve.Props, "prop")} of which {(curve.Ended == 0 ? "none" : $"{curve.Ended}")} {(curve.Ended == 1 ? "was" : "were")} {end}";
        return curve switch
        {
            { MedianHours: { } at, LowHours: { } low, HighHours: { } high } => $"{of}: half last {at:0} h ({low:0} to {high:0}).",
            { MedianHours: { } at, LowHours: { } low } => $"{of}: half last {at:0} h ({low:0} or more).",
            { LowHours: { } low } => $"{of}: half last longer than {low:0} h.",
            _ => $"{of}: how long half of them last is not seen yet.",
        };
    }
}

/// <summary>The share of one group that outlives each age.</summary>
/// <param name="Group">The group's word.</param>
/// <param name="Props">Props followed.</param>
/// <param name="Ended">How many of them have ended.</param>
/// <param name="Steps">The staircase from age 0 to the oldest that was watched.</param>
/// <param name="MedianHours">The age that half outlive [h]; null when it was not reached.</param>
/// <param name="LowHours">Its lower limit [h].</param>
/// <param name="HighHours">Its upper limit [h].</param>
public sealed record LifeCurve(string Group, int Props, int Ended, IReadOnlyList<LifeStep> Steps, double? MedianHours, double? LowHours, double? HighHours);

/// <summary>A step of the staircase: from this age on.</summary>
/// <param name="Hours">The age [h].</param>
/// <param name="Alive">The share that goes on [1].</param>
/// <param name="Low">Its lower limit [1].</param>
/// <param name="High">Its upper limit [1].</param>
public sealed record LifeStep(double Hours, double Alive, double Low, double High);
