using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Statistics.Tests.Simulations;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>What a mounting borrows from its fleet, its group and its boat. Computed here on invented fleets; no source.</summary>
public sealed class What_a_fleet_teaches
{
    private static readonly List<FleetMember> s_slow = Fleet(3, 5);
    private static readonly List<FleetMember> s_fast = Fleet(3, 45);

    [Fact]
    public void One_boat_with_one_trial_is_a_fleet()
    {
        var only = new FleetMember("m1", "b1", "aluminium", "fresh", new(5000, 6000, [new(1, 5, 5700)], []));
        var fleet = Fit([only]);
        var (prior, settings) = fleet.Member(only);

        var found = DriftEstimator.Assess(only.Series, prior, settings);

        Assert.True(found.PriorOnly);
        Drifts.Sound(found, only.Series);
        Assert.InRange(found.RpmPer100Hours.Value, 5, 20);
    }

    [Fact]
    public void A_fleet_of_nothing_has_the_expectation_of_the_trade()
    {
        var unseen = Fit([]).Group("aluminium", "fresh");
        Assert.Equal(1, unseen.Weights.ToArray().Sum(), 1e-9);
        Assert.InRange(SlopeGrid.Mean(unseen.Weights), 6, 25);
    }

    [Fact]
    public void In_a_fleet_that_wears_fast_a_new_boat_is_expected_to() => Assert.True(
        SlopeGrid.Mean(Fit(s_fast).Group("aluminium", "coastal").Weights) > 2.5 * SlopeGrid.Mean(Fit(s_slow).Group("aluminium", "coastal").Weights));

    [Fact]
    public void A_group_that_the_fleet_has_not_seen_is_expected_to_wear_as_the_fleet_does_but_less_surely()
    {
        var fleet = Fit(s_fast);
        var seen = fleet.Group("aluminium", "coastal").Weights;
        var unseen = fleet.Group("wood", "mercury").Weights;

        Assert.True(SlopeGrid.Mean(unseen) > 15);
        Assert.True(Width(unseen) > Width(seen));
    }

    [Fact]
    public void The_order_of_its_members_does_not_matter()
    {
        var (one, other) = (Fit(s_slow), Fit([.. s_slow.AsEnumerable().Reverse()]));
        foreach (var member in s_slow)
            Assert.Equal(one.Member(member).Prior.Weights.ToArray(), other.Member(member).Prior.Weights.ToArray());
    }

    /// <summary>Else its trials would count twice. What remains is the luck of the draws.</summary>
    [Fact]
    public void The_prior_of_a_mounting_hardly_knows_its_own_trials()
    {
        var own = s_slow[7];
        var wild = own with { Series = own.Series with { Trials = [.. own.Series.Trials.Select(t => t with { Rpm = t.Rpm + (60 * t.EngineHours / 100) })] } };
        var (prior, changed) = (Fit(s_slow).Member(own).Prior, Fit([.. s_slow.Select(m => m == own ? wild : m)]).Member(wild).Prior);

        Assert.Equal(SlopeGrid.Mean(prior.Weights), SlopeGrid.Mean(changed.Weights), 1.5);
    }

    [Fact]
    public void A_fleet_finds_how_much_its_trials_scatter()
    {
        static double Noise(FleetPrior fleet) => fleet.Settings.Noise.Shares[2]; // the median of five nodes
        var rough = s_slow.ConvertAll(m => m with { Series = m.Series with { Trials = [.. m.Series.Trials.Select((t, i) => t with { Rpm = t.Rpm + (60 * Math.Sin((7.7 * i) + (m.Id[^1] * 3) + m.Id[^2])) })] } });

        Assert.InRange(Noise(Fit(s_slow)), 0.005, 0.009);
        Assert.True(Noise(Fit(rough)) > 1.1 * Noise(Fit(s_slow)));
    }

    [Fact]
    public void Two_members_of_one_name_are_refused() =>
        Assert.Throws<ArgumentException>(() => Fit([s_slow[0], s_slow[0]]));

    private static FleetPrior Fit(List<FleetMember> members) => FleetPrior.Fit(members, WearExpectation.Trade, DriftSettings.Recommended);

    private static List<FleetMember> Fleet(int beginning, double drift) =>
        [.. new InventedFleet(beginning).Draw(40, 9, uniform: false, drift).Select(m => m.Member)];

    private static double Width(ReadOnlySpan<double> weights) => SlopeGrid.Quantile(weights, 0.9) - SlopeGrid.Quantile(weights, 0.1);
}
