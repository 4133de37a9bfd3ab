using CsCheck;
using FleetWake.Propulsion.Advice;

namespace FleetWake.Propulsion.Tests.Advice;

/// <summary>The fewest props that keep every use of a boat in its band. Invented boats; what is expected is counted here.</summary>
public class The_prop_plan
{
    private static readonly PitchQuestion s_question = new()
    {
        FittedPitch = Length.FromInches(19),
        CorrectedRpm = new Uncertain(5600, 30),
        BandLow = EngineRate.FromRevolutionsPerMinute(5200),
        BandHigh = EngineRate.FromRevolutionsPerMinute(5900),
        Available = [.. Enumerable.Range(14, 10).Select(p => Length.FromInches(p))],
        PitchElasticity = new Uncertain(-0.73, 0.05),
        PitchBetweenProps = 0.008,
    };

    [Fact]
    public void One_prop_is_enough_where_it_keeps_every_use()
    {
        var plan = PropPlan.Of(s_question with { Loads = [LoadCase.Usual, Use("two more aboard", -0.01)] });
        Assert.Equal(19, Assert.Single(plan.Props).Pitch.Inches);
        Assert.Equal(["usual", "two more aboard"], plan.Props[0].Uses.Select(u => u.Use));
        Assert.Empty(plan.NotKept);
    }

    [Fact]
    public void A_use_far_off_takes_a_second_prop()
    {
        var plan = PropPlan.Of(s_question with { Loads = [LoadCase.Usual, Use("full of divers", -0.09)] });
        Assert.Equal(2, plan.Props.Count);
        Assert.True(plan.Props[0].Pitch.Inches < 19);
        Assert.Equal(["full of divers"], plan.Props[0].Uses.Select(u => u.Use));
    }

    [Fact]
    public void The_prop_of_a_heavy_use_comes_off_before_a_light_one()
    {
        var plan = PropPlan.Of(s_question with { Loads = [LoadCase.Usual, Use("full of divers", -0.12)] });
        Assert.Equal(["usual"], plan.Props[0].ComesOffBefore);
        Assert.Empty(plan.Props[1].ComesOffBefore);
    }

    /// <summary>Of the sets of two that keep both uses none leaves less over the top when the wrong prop is left on, to the per cent.</summary>
    [Fact]
    public void Of_sets_of_one_size_the_one_that_over_revs_least_with_the_wrong_prop_on_is_taken()
    {
        var question = s_question with { Loads = [LoadCase.Usual, Use("full of divers", -0.13)] };
        var plan = PropPlan.Of(question);
        var rows = PitchAdvice.Of(question).Rows;
        double Left(PitchRow row) => row.Landings[0].AboveTop;
        var chosen = rows.Single(r => r.Pitch == plan.Props[0].Pitch);
        var keepers = rows.Where(r => r.Landings[1] is { InBand: >= 0.9, HighestRpm: <= 5900 }).ToList();
        Assert.True(keepers.Count > 1);
        Assert.Equal(keepers.Min(Left), Left(chosen), 0.01);
        Assert.True(keepers.MaxBy(r => r.Landings[1].InBand)!.Pitch.Metres < chosen.Pitch.Metres, "the surest alone would over-rev more");
    }

    [Fact]
    public void A_use_that_nothing_keeps_is_said()
    {
        var plan = PropPlan.Of(s_question with { Loads = [LoadCase.Usual, Use("towing", -0.45)] });
        Assert.Equal(["towing"], plan.NotKept);
        Assert.Single(plan.Props);
    }

    [Fact]
    public void Every_use_is_kept_or_said_not_to_be_and_none_of_the_props_is_idle() =>
        Gen.Double[-0.2, 0.15].Array[1, 5].Sample(shifts =>
        {
            var question = s_question with { Loads = [.. shifts.Select((shift, i) => Use($"use {i}", shift))] };
            var plan = PropPlan.Of(question);
            Assert.Equal(question.Loads.Count, plan.NotKept.Count + plan.Props.Sum(p => p.Uses.Count));
            Assert.All(plan.Props, p => Assert.NotEmpty(p.Uses));
            Assert.All(plan.Props.SelectMany(p => p.Uses), u => Assert.True(u.InBand >= 0.9 && u.HighestRpm <= 5900));
            Assert.True(plan.Props.Count <= FewestByHand(question), "no smaller set may exist");
        }, iter: 60);

    /// <summary>Pitches that keep a use lie side by side, so stabbing the intervals from one end gives the fewest.</summary>
    private static int FewestByHand(PitchQuestion question)
    {
        var rows = PitchAdvice.Of(question).Rows;
        var intervals = Enumerable.Range(0, question.Loads.Count)
            .Select(use => rows.Where(r => r.Landings[use] is var l && l.InBand >= 0.9 && l.HighestRpm <= 5900).Select(r => r.Pitch.Inches).ToList())
            .Where(kept => kept.Count > 0).OrderBy(kept => kept.Max()).ToList();
        var (count, at) = (0, double.NegativeInfinity);
        foreach (var kept in intervals.Where(kept => !kept.Contains(at)))
            if (!kept.Contains(at)) (count, at) = (count + 1, kept.Max());
        return count;
    }

    private static LoadCase Use(string name, double lnRpm) => new(name, new Uncertain(lnRpm, 0));
}
