using FleetWake.Logbook.Entries;
using FleetWake.Statistics.Life;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>How long the props of one group last.</summary>
/// <param name="Group">The group's word, such as <c>aluminium</c> or <c>salt</c>.</param>
/// <param name="Props">Props whose life is followed.</param>
/// <param name="Ended">How many of them have ended, for the question asked.</param>
/// <param name="EngineHours">Engine hours that they ran [h].</param>
/// <param name="Alive">The share that outlives some ages, by Kaplan and Meier; empty when the group is too small.</param>
/// <param name="MedianHours">The age that half outlive [h], limits by Brookmeyer and Crowley; null when the group is too small. A part that is null was not reached.</param>
/// <param name="Weibull">The Weibull life; null with too few ends.</param>
/// <param name="Sentence">The same in words.</param>
public sealed record LifeGroup(
    string Group,
    int Props,
    int Ended,
    double EngineHours,
    IReadOnlyList<AliveAt> Alive,
    LifeReached? MedianHours,
    WeibullFigures? Weibull,
    string Sentence)
{
    /// <summary>Fewest props that a share is told of; judgement, no source.</summary>
    public const int FewestProps = 5;

    /// <summary>Fewest ends that a Weibull life is told of: its intervals were simulated with no fewer (see <see cref="WeibullLife"/>).</summary>
    public const int FewestEnds = 4;

    private static readonly double[] s_ages = [100, 200, 300, 500, 700, 1000, 1500, 2000]; // [h]

    internal static LifeGroup Of(string group, IReadOnlyList<PropLifetime> lives, LifeQuestion question)
    {
        List<Lifetime> told = [.. lives.Select(l => new Lifetime(l.EngineHours, l.HasEnded(question)))];
        var (ended, hours) = (told.Count(l => l.HasEnded), told.Sum(l => l.Hours));
        if (told.Count < FewestProps)
            return new LifeGroup(group, told.Count, ended, hours, [], null, null, $"{Many(told.Count, group)}: too few to say how long they last, {FewestProps} are wanted.");

        var curve = KaplanMeier.Of(told, Limits.Level)!;
        var alive = s_ages.Where(age => age <= curve.FollowedToHours).Select(age => (Age: age, Share: Limits.Of(curve.At(age))))
            .Where(a => a.Share is not null).Select(a => new AliveAt(a.Age, told.Count(l => l.Hours >= a.Age), a.Share!)).ToList();
        var median = curve.HoursUntil(0.5);
        var weibull = ended < FewestEnds ? null : WeibullFigures.Of(WeibullFit.Of(told, Limits.Level));
        return new LifeGroup(group, told.Count, ended, hours, alive, median, weibull, Words(group, told.Count, ended, hours, median, weibull, question));
    }

    private static string Words(string group, int props, int ended, double hours, LifeReached median, WeibullFigures? weibull, LifeQuestion question)
    {
        var end = question == LifeQuestion.UsedUp ? "used up" : "worn";
        var ran = $"Of {Many(props, group)} {(ended == 0 ? $"none was {end}" : $"{ended} {(ended == 1 ? "was" : "were")} {end}")} in {hours:0} engine hours";
        var half = median switch
        {
            { Hours: { } at } => $"half last {at:0} h ({Between(median.LowHours, median.HighHours)})",
            { LowHours: { } low } => $"half last longer than {low:0} h, and no median is seen yet",
            _ => "none can say yet how long half of them last",
        };
        var wear = weibull is null
            ? $"; {FewestEnds} ends are wanted for a Weibull life"
            : weibull.Shape.Low > 1 ? "; the older they are, the sooner they end" : weibull.Shape.High < 1 ? "; the young ones end first" : "; no sign yet that age matters";
        return $"{ran}; {half}{wear}.";
    }

    private static string Between(double? low, double? high) => (low, high) switch
    {
        ({ } l, { } h) => $"{l:0} to {h:0} h",
        ({ } l, null) => $"{l:0} h or more, no upper limit yet",
        _ => "no limits yet",
    };

    private static string Many(int props, string group) => $"{props} {Prose(group)} {(props == 1 ? "prop" : "props")}";

    private static string Prose(string group) => group is "fresh" or "salt" or "brackish" or "silty" ? group + "-water" : group;
}

/// <summary>The share of a group that outlives an age.</summary>
/// <param name="EngineHours">The age [h].</param>
/// <param name="Followed">Props that were followed to it.</param>
/// <param name="Share">The share [1], with limits from Greenwood's error on log(-log).</param>
public sealed record AliveAt(double EngineHours, int Followed, Limits Share);

/// <summary>A Weibull life: the share that outlives t is exp(-(t / scale)^shape).</summary>
/// <param name="Shape">The shape [1]: above 1 they wear out, at 1 age does not matter, below 1 the young fail.</param>
/// <param name="ScaleHours">The age that 36.8 % outlive [h].</param>
/// <param name="MeanHours">The mean life [h].</param>
public sealed record WeibullFigures(Limits Shape, Limits ScaleHours, double MeanHours)
{
    internal static WeibullFigures? Of(WeibullLife? life) =>
        life is not null && double.IsFinite(life.MeanHours) && Limits.Of(life.Shape) is { } shape && Limits.Of(life.ScaleHours) is { } scale
            ? new WeibullFigures(shape, scale, life.MeanHours)
            : null;
}

/// <summary>Whether groups last alike, by the log-rank test.</summary>
/// <param name="Groups">The groups compared.</param>
/// <param name="ChiSquared">The statistic [1].</param>
/// <param name="DegreesOfFreedom">Groups that could be compared, less one.</param>
/// <param name="Probability">How often groups that last alike would differ this much [1].</param>
/// <param name="Rough">Fewer than five ends are expected in some group: the probability is rough (common practice, no source).</param>
/// <param name="Sentence">The same in words.</param>
public sealed record LifeComparison(
    IReadOnlyList<string> Groups, double ChiSquared, int DegreesOfFreedom, double Probability, bool Rough, string Sentence)
{
    internal static LifeComparison? Of(IReadOnlyList<string> groups, LogRankTest? test, string within)
    {
        if (test is null) return null;
        var rough = test.Expected.Any(e => e < 5);
        var chance = test.Probability < 0.01 ? "less than 1" : $"{100 * test.Probability:0}";
        return new LifeComparison(
            groups, test.ChiSquared, test.DegreesOfFreedom, test.Probability, rough,
            $"If {string.Join(" and ", groups)}{within} lasted alike, a difference like this would come in {chance} of 100 fleets{(rough ? "; with so few ends that is rough" : "")}.");
    }
}
