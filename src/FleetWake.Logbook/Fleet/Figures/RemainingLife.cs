using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using FleetWake.Statistics.Life;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>How much longer a prop may be expected to last, by those of its material that lived to its hours.</summary>
/// <param name="Prop">The tag.</param>
/// <param name="Material">What it is made of; null while it is not registered.</param>
/// <param name="Hours">Engine hours that it ran from new [h]; null when it cannot be followed from new.</param>
/// <param name="LeftOut">Why it cannot be followed from new.</param>
/// <param name="Followed">Props of its material that were followed beyond its hours.</param>
/// <param name="Ended">How many of those were used up later.</param>
/// <param name="HoursLeft">The hours from now that half of them lasted [h]; null when nothing is reckoned. A part that is null was not reached.</param>
/// <param name="Level">Level of the limits [1].</param>
/// <param name="Sentence">The same in words.</param>
public sealed record RemainingLife(
    string Prop, PropMaterial? Material, double? Hours, LifeLeftOut? LeftOut, int Followed, int Ended, LifeReached? HoursLeft, double Level, string Sentence)
{
    /// <summary>The remaining life of every prop of a fleet that is not used up yet, by tag.</summary>
    public static IReadOnlyDictionary<string, RemainingLife> Of(FleetRecord fleet)
    {
        var homes = PropLifetime.Homes(fleet.Boats, fleet.Office);
        var all = fleet.Props.Select(p => (Prop: p, Life: PropLifetime.Of(p, homes))).ToList();
        List<PropLifetime> lives = [.. all.Select(a => a.Life.Lifetime).OfType<PropLifetime>()];
        return all.Where(a => a.Prop.Retired is null && a.Life.Lifetime?.HasEnded(LifeQuestion.UsedUp) != true)
            .ToDictionary(a => a.Prop.Life.Prop, a => Of(a.Prop, a.Life.Lifetime, a.Life.LeftOut, lives), StringComparer.Ordinal);
    }

    /// <summary>
    /// What a material showed beyond some hours: the curve of Kaplan and Meier of those that lived to them, each taken as
    /// followed from there on (delayed entry), which is S(t) / S(hours) with limits of its own.
    /// </summary>
    /// <param name="lives">Lifetimes of a fleet's props.</param>
    /// <param name="material">The material.</param>
    /// <param name="hours">The hours that are behind it [h], zero or more.</param>
    /// <returns>Props followed beyond the hours, how many ended, and the hours from there that half of them lasted; null where too few did.</returns>
    public static (int Followed, int Ended, LifeReached? HoursLeft) Beyond(IEnumerable<PropLifetime> lives, PropMaterial material, double hours)
    {
        List<Lifetime> beyond = [.. lives.Where(l => l.Material == material && l.EngineHours > hours)
            .Select(l => new Lifetime(l.EngineHours, l.HasEnded(LifeQuestion.UsedUp)) { FromHours = hours })];
        var ended = beyond.Count(l => l.HasEnded);
        if (beyond.Count < LifeGroup.FewestProps || ended < LifeGroup.FewestEnds) return (beyond.Count, ended, null);
        var half = KaplanMeier.Of(beyond, Limits.Level)!.HoursUntil(0.5);
        return (beyond.Count, ended, new LifeReached(half.Hours - hours, half.LowHours - hours, half.HighHours - hours));
    }

    private static RemainingLife Of(PropRecord prop, PropLifetime? life, LifeLeftOut? leftOut, IReadOnlyList<PropLifetime> lives)
    {
        // One that came new and was never fitted has all of its life before it.
        double? hours = life?.EngineHours ?? (leftOut == LifeLeftOut.NeverFitted ? 0 : null);
        var material = prop.Life.Registered?.Material;
        if (hours is not { } ran || material is not { } made || life is { End: not LifeEnd.InUse })
        {
            var why = material is null ? "it is not registered" : leftOut is { } reason ? Why(reason) : "it is not followed any further";
            return new RemainingLife(prop.Life.Prop, material, hours, leftOut, 0, 0, null, Limits.Level, $"No remaining life is reckoned: {why}.");
        }

        var (followed, ended, left) = Beyond(lives, made, ran);
        return new RemainingLife(prop.Life.Prop, made, ran, leftOut, followed, ended, left, Limits.Level, Words(made, ran, followed, ended, left));
    }

    private static string Words(PropMaterial material, double hours, int followed, int ended, LifeReached? left)
    {
        var group = $"{followed} {Entries.Words.Prose(material)} {(followed == 1 ? "prop" : "props")} followed {(hours > 0 ? $"beyond its {hours:0} h" : "from new")}";
        return left switch
        {
            null => $"Not enough has worn out yet to say: of {group}, {ended} {(ended == 1 ? "was" : "were")} used up ({LifeGroup.FewestProps} followed and {LifeGroup.FewestEnds} used up are wanted).",
            { Hours: { } at } => $"Of {group}, {ended} were used up; half lasted {at:0} h more ({Between(left)}; {100 * Limits.Level:0} % limits).",
            { LowHours: { } low } => $"Of {group}, {ended} were used up; half lasted more than {low:0} h longer, and no median is seen yet.",
            _ => $"Of {group}, {ended} were used up; how long half of them last is not seen yet.",
        };
    }

    private static string Between(LifeReached left) => (left.LowHours, left.HighHours) switch
    {
        ({ } low, { } high) => $"{low:0} to {high:0} h",
        ({ } low, null) => $"{low:0} h or more, no upper limit yet",
        _ => "no limits yet",
    };

    private static string Why(LifeLeftOut why) => why switch
    {
        LifeLeftOut.FoundFitted => "it was found fitted, of unknown age",
        LifeLeftOut.CameUsed => "it came used",
        LifeLeftOut.OnLoan => "it is somebody else's",
        _ => "its hours are not known",
    };
}
