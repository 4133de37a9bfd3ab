using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using FleetWake.Statistics.Life;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>How long the fleet's props last, by material and by water.</summary>
/// <param name="Question">What ends a life.</param>
/// <param name="Props">Props whose life is followed.</param>
/// <param name="Ended">How many of them have ended.</param>
/// <param name="TakenAsNew">Of those followed, how many nobody told to be new: their first mounting is on record.</param>
/// <param name="LeftOut">Props that are not followed, by reason.</param>
/// <param name="MaterialNotTold">Props followed that stand in no group of materials, for they are not registered.</param>
/// <param name="ByMaterial">Groups by material.</param>
/// <param name="ByWater">Groups by the water in which most of a prop's hours were run.</param>
/// <param name="Materials">Whether materials last alike; null when there are not two with a prop, or none has ended.</param>
/// <param name="Waters">Whether props last alike in all waters.</param>
/// <param name="MaterialsWithinWaters">Whether materials last alike when each water is looked at by itself and the differences are added up.</param>
/// <param name="Level">Level of all limits [1].</param>
/// <param name="Sentence">The figure in words.</param>
public sealed record PropLives(
    LifeQuestion Question,
    int Props,
    int Ended,
    int TakenAsNew,
    IReadOnlyList<LeftOut> LeftOut,
    int MaterialNotTold,
    IReadOnlyList<LifeGroup> ByMaterial,
    IReadOnlyList<LifeGroup> ByWater,
    LifeComparison? Materials,
    LifeComparison? Waters,
    LifeComparison? MaterialsWithinWaters,
    double Level,
    string Sentence)
{
    /// <summary>Asks a question of every prop of a fleet.</summary>
    public static PropLives Of(FleetRecord fleet, LifeQuestion question = LifeQuestion.UsedUp)
    {
        var (lives, leftOut) = Lifetimes(fleet);
        var materials = Grouped(lives, l => l.Material);
        var waters = Grouped(lives, l => l.Water);
        var ended = lives.Count(l => l.HasEnded(question));
        return new PropLives(
            question,
            lives.Count,
            ended,
            lives.Count(l => !l.ToldNew),
            leftOut,
            lives.Count(l => l.Material is null),
            [.. materials.Select(g => LifeGroup.Of(g.Word, g.Lives, question))],
            [.. waters.Select(g => LifeGroup.Of(g.Word, g.Lives, question))],
            Compared([.. materials.Select(g => g.Word)], [.. materials.Select(g => g.Lives)], question),
            Compared([.. waters.Select(g => g.Word)], [.. waters.Select(g => g.Lives)], question),
            Within([.. materials.Select(g => g.Word)], waters.Select(w => Grouped(w.Lives, l => l.Material)).ToList(), question),
            Limits.Level,
            Words(lives.Count, ended, leftOut, question));
    }

    /// <summary>The lifetimes of a fleet's props, and how many have none that can be used.</summary>
    public static (IReadOnlyList<PropLifetime> Lives, IReadOnlyList<LeftOut> LeftOut) Lifetimes(FleetRecord fleet)
    {
        var homes = PropLifetime.Homes(fleet.Boats, fleet.Office);
        var all = fleet.Props.Select(p => PropLifetime.Of(p, homes)).ToList();
        return (
            [.. all.Select(a => a.Lifetime).OfType<PropLifetime>()],
            [.. all.Select(a => a.LeftOut).OfType<LifeLeftOut>().GroupBy(w => w).OrderBy(g => g.Key).Select(g => new LeftOut(g.Key, g.Count()))]);
    }

    private static List<(string Word, List<PropLifetime> Lives)> Grouped<T>(IEnumerable<PropLifetime> lives, Func<PropLifetime, T?> of)
        where T : struct, Enum =>
        [.. lives.Where(l => of(l) is not null).GroupBy(l => of(l)!.Value).OrderBy(g => g.Key).Select(g => (Entries.Words.Of(g.Key), g.ToList()))];

    private static LifeComparison? Compared(IReadOnlyList<string> words, IReadOnlyList<List<PropLifetime>> groups, LifeQuestion question) =>
        groups.Count < 2 ? null : LifeComparison.Of(words, LogRank.Of([.. groups.Select(g => Told(g, question))]), "");

    private static LifeComparison? Within(
        IReadOnlyList<string> words, List<List<(string Word, List<PropLifetime> Lives)>> waters, LifeQuestion question)
    {
        if (words.Count < 2 || waters.Count < 2) return null;
        IReadOnlyList<IReadOnlyCollection<Lifetime>> Stratum(List<(string Word, List<PropLifetime> Lives)> water) =>
            [.. words.Select(w => Told(water.FirstOrDefault(g => g.Word == w).Lives ?? [], question))];
        return LifeComparison.Of(words, LogRank.OfStrata([.. waters.Select(Stratum)]), ", each water by itself,");
    }

    private static Lifetime[] Told(IEnumerable<PropLifetime> lives, LifeQuestion question) =>
        [.. lives.Select(l => new Lifetime(l.EngineHours, l.HasEnded(question)))];

    private static string Words(int props, int ended, IReadOnlyList<LeftOut> leftOut, LifeQuestion question)
    {
        var end = question == LifeQuestion.UsedUp ? "used up" : "worn";
        var aside = leftOut.Count == 0 ? "" : $" Left out: {string.Join(", ", leftOut.Select(l => $"{l.Props} {Why(l.Why)}"))}.";
        return props == 0
            ? $"No prop's life can be followed from new yet.{aside}"
            : $"{props} {(props == 1 ? "prop is" : "props are")} followed from new; {(ended == 0 ? "none" : $"{ended}")} of them {(ended > 1 ? "were" : "was")} {end}.{aside}";
    }

    private static string Why(LifeLeftOut why) => why switch
    {
        LifeLeftOut.FoundFitted => "found fitted, of unknown age",
        LifeLeftOut.CameUsed => "that came used",
        LifeLeftOut.OnLoan => "on loan",
        LifeLeftOut.NeverFitted => "never fitted",
        _ => "without known hours",
    };
}
