using FleetWake.Propulsion.Causes;

namespace FleetWake.Propulsion.Tests.Causes;

/// <summary>Bad input is refused with the part named, never answered with a number that is none.</summary>
public class Cases_that_cannot_be_weighed
{
    private static readonly CauseCase s_good = Tern.Case(Tern.Runs("tern", "P1", 0.01, 0.01));

    private static readonly Dictionary<string, (string Part, CauseCase Given)> s_bad = new()
    {
        ["no model"] = ("Models", s_good with { Models = [] }),
        ["a model without weight"] = ("Models", s_good with { Models = [Tern.Console with { Weight = 0 }] }),
        ["a model without slopes"] = ("Models", s_good with { Models = [default] }),
        ["no priors"] = ("Priors", s_good with { Priors = [] }),
        ["two priors of nothing"] = ("Priors", s_good with { Priors = [.. CausePrior.Weak, new(Cause.None, 1, 1)] }),
        ["a width that is no number"] = ("Priors", s_good with { Priors = [.. CausePrior.Weak.Select(p => p with { Width = double.NaN })] }),
        ["two baselines"] = ("Baselines", s_good with { Baselines = [.. s_good.Baselines, .. s_good.Baselines] }),
        ["a boat without baseline"] = ("WideOpen", s_good with { WideOpen = Tern.Runs("rook", "P1", 0, 0) }),
        ["an RPM that is no number"] = ("WideOpen", s_good with { WideOpen = Tern.Runs("tern", "P1", double.NaN, 0) }),
        ["an endless speed"] = ("WideOpen", s_good with { WideOpen = Tern.Runs("tern", "P1", 0, double.PositiveInfinity) }),
        ["a reading without doubt"] = ("WideOpen", s_good with { WideOpen = [new("tern", "P1", 0, 0, new ChangeDoubt(0, 0.01))] }),
        ["doubts that are one"] = ("WideOpen", s_good with { WideOpen = [new("tern", "P1", 0, 0, new ChangeDoubt(0.01, 0.01, 1))] }),
        ["a point without doubt"] = ("PartThrottle", s_good with { PartThrottle = [new("tern", "P1", new Uncertain(0, 0))] }),
        ["a gauge of a hub"] = ("Gauges", s_good with { Gauges = [new("P1", Cause.HubSlip, new Uncertain(0, 0.01))] }),
        ["a spread that is no number"] = ("PitchBetweenProps", s_good with { PitchBetweenProps = double.NaN }),
    };

    public static TheoryData<string> Bad => [.. s_bad.Keys];

    [Theory]
    [MemberData(nameof(Bad))]
    public void The_part_that_cannot_be_is_named(string what)
    {
        var (part, given) = s_bad[what];
        Assert.Equal(part, Assert.ThrowsAny<ArgumentException>(() => Diagnosis.Of(given)).ParamName);
    }

    [Fact]
    public void Without_a_reading_nothing_is_learned()
    {
        var finding = Diagnosis.Of(Tern.Case() with { Baselines = [new("tern", "P1", Tern.Known)] });
        Assert.Equal(CauseGroup.None, finding.Group);
        Assert.All(finding.Suspects, s => Assert.Equal(0.1, s.Probability, 1e-9));
    }

    /// <summary>Common practice, no source: no hand goes near a prop whose engine could start.</summary>
    [Theory]
    [InlineData(SeparatingTest.HubMark)]
    [InlineData(SeparatingTest.LookAtBottomAndBlades)]
    [InlineData(SeparatingTest.TrimIn)]
    [InlineData(SeparatingTest.Gauge)]
    [InlineData(SeparatingTest.SwapTheProp)]
    public void A_test_with_hands_near_the_prop_says_how_it_is_made_safe(SeparatingTest test) =>
        Assert.Contains("engine off, key out, lanyard off", SeparatingTests.Words(test), StringComparison.Ordinal);

    [Fact]
    public void Every_test_has_its_words() => Assert.All(Enum.GetValues<SeparatingTest>(), test => Assert.NotEmpty(SeparatingTests.Words(test)));

    [Fact]
    public void Every_pair_of_causes_has_a_test_that_parts_it() => Assert.All(
        from one in CauseFacts.Single from other in CauseFacts.Single where one < other select (one, other),
        pair => Assert.NotEmpty(SeparatingTests.For([pair.one, pair.other], airUnread: false)));
}
