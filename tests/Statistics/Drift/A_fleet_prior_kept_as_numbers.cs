using System.Text.Json;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Statistics.Tests.Simulations;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>A prior that was written and read again gives the same results to the last bit. Invented fleets; no source.</summary>
public sealed class A_fleet_prior_kept_as_numbers
{
    private static readonly List<FleetMember> s_members = [.. new InventedFleet(21).Draw(30, null, uniform: false).Select(m => m.Member)];
    private static readonly FleetPrior s_fleet = FleetPrior.Fit(s_members, WearExpectation.Trade, DriftSettings.Recommended);

    [Fact]
    public void After_a_way_through_JSON_every_member_is_assessed_as_before()
    {
        var again = Again(s_fleet.Figures());
        Assert.All(s_members, m => Same(s_fleet, again, m));
        Assert.Equal(JsonSerializer.Serialize(s_fleet.Figures()), JsonSerializer.Serialize(again.Figures()));
    }

    [Fact]
    public void So_are_new_boats_of_a_group_that_was_seen_and_of_one_that_was_not()
    {
        var again = Again(s_fleet.Figures());
        Same(s_fleet, again, s_members[3] with { Id = "new", Boat = null });
        Same(s_fleet, again, s_members[3] with { Id = "new", Material = "wood" });
        Assert.Equal(s_fleet.Groups.OrderBy(g => g.Key), again.Groups.OrderBy(g => g.Key));
    }

    [Fact]
    public void Of_members_that_are_not_kept_the_group_is_left()
    {
        var some = Again(s_fleet.Figures(new HashSet<string> { s_members[0].Id }));
        Same(s_fleet, some, s_members[0]);
        var (prior, settings) = some.Member(s_members[1]);
        Assert.Equal(s_fleet.Group(s_members[1].Material, s_members[1].Water).Weights.ToArray(), prior.Weights.ToArray());
        Assert.Equal(s_fleet.Settings.Noise.Shares.ToArray(), settings.Noise.Shares.ToArray());
    }

    [Fact]
    public void A_fleet_of_nothing_can_be_kept_too()
    {
        var nothing = FleetPrior.Fit([], WearExpectation.Trade, DriftSettings.Recommended);
        Same(nothing, Again(nothing.Figures()), s_members[0]);
    }

    [Fact]
    public void Counts_are_whole_ten_million_in_all_and_leave_no_drift_impossible()
    {
        var figures = s_fleet.Figures();
        Assert.All(figures.Members.Select(m => m.Counts).Concat(figures.Groups.Select(g => g.Counts)).Append(figures.Unseen), counts =>
        {
            Assert.All(counts, c => Assert.True(c >= 1));
            Assert.InRange(counts.Sum(), 9_999_900, 10_000_200);
        });
    }

    [Fact]
    public void Figures_that_no_fleet_gave_are_refused_with_the_reason()
    {
        var good = s_fleet.Figures();
        void Refused(FleetPriorFigures bad, string reason) => Assert.Contains(reason, Assert.ThrowsAny<ArgumentException>(() => FleetPrior.Of(bad)).Message, StringComparison.Ordinal);

        Refused(good with { GrossChance = double.NaN }, "gross error");
        Refused(good with { Noise = new(0, 0.1) }, "between 0 and 1");
        Refused(good with { Noise = null! }, "must be there");
        Refused(good with { Unseen = [1, 2] }, "unseen: 2 counts");
        Refused(good with { Groups = [good.Groups[0] with { Counts = [.. good.Groups[0].Counts.Select(_ => 0)] }] }, "a count of 0");
        Refused(good with { Groups = [good.Groups[0], good.Groups[0]] }, "is there twice");
        Refused(good with { Members = [good.Members[0], good.Members[0]] }, "is there twice");
        Refused(good with { Members = [good.Members[0] with { Id = null! }] }, "must be there");
        Refused(good with { Members = [good.Members[0] with { NoiseLogSd = 3 }] }, "from 0 to 2");
    }

    /// <summary>A hull grows weed and the RPM fall: a fleet whose other props all wear must not hide it.</summary>
    [Fact]
    public void A_mounting_that_falls_steadily_is_found_falling()
    {
        var falling = new FleetMember("falling", null, "aluminium", "silty", Drifts.Steady(12, -15, 60));
        var (prior, settings) = FleetPrior.Fit([.. s_members, falling], WearExpectation.Trade, DriftSettings.Recommended).Member(falling);

        var found = DriftEstimator.Assess(falling.Series, prior, settings).RpmPer100Hours;

        Assert.True(found.High < 0, $"{found}");
        Assert.InRange(-15, found.Low, found.High);
    }

    private static FleetPrior Again(FleetPriorFigures figures) =>
        FleetPrior.Of(JsonSerializer.Deserialize<FleetPriorFigures>(JsonSerializer.Serialize(figures))!);

    private static void Same(FleetPrior expected, FleetPrior actual, FleetMember member)
    {
        var ((priorA, settingsA), (priorB, settingsB)) = (expected.Member(member), actual.Member(member));
        Assert.Equal(settingsA.GrossChance, settingsB.GrossChance);
        Assert.Equal(settingsA.Noise.Shares.ToArray(), settingsB.Noise.Shares.ToArray());
        Assert.Equal(priorA.Weights.ToArray(), priorB.Weights.ToArray());
        var (a, b) = (DriftEstimator.Assess(member.Series, priorA, settingsA), DriftEstimator.Assess(member.Series, priorB, settingsB));
        Assert.Equal(a.RpmPer100Hours, b.RpmPer100Hours);
        Assert.Equal(a.Weights, b.Weights);
        Assert.Equal(a.Exit, b.Exit);
        Assert.Equal(a.LevelRpm, b.LevelRpm);
    }
}
