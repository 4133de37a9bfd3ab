using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Findings;

public class Twins
{
    private static readonly Fleet s_twins = new Fleet().With(
        Dock.Boat(positions: ["port", "starboard"]), Dock.Engine(), Dock.Engine(engine: "e2") with { TachometerStepRpm = 50 },
        Dock.Fitted(position: "port"), Dock.Fitted(engine: "e2", position: "starboard"),
        Dock.Prop(), Dock.Prop(prop: "p2"), Dock.Prop(prop: "p3"),
        Dock.Mounted(position: "port"), Dock.Mounted("2026-01-05T09:30", "p2", "starboard"));

    [Fact]
    public void The_first_prop_of_each_side_is_no_change_to_the_other() => Assert.Equal([0, 0], Stretches(s_twins));

    [Fact]
    public void Another_prop_on_one_side_opens_a_baseline_for_both()
    {
        var changed = s_twins.With(Dock.Removed("2026-02-01T09:00", "p2", "starboard"), Dock.Mounted("2026-02-01T10:00", "p3", "starboard"));
        Assert.Equal([1, 0], Stretches(changed)); // at starboard a mounting of its own begins
        Assert.Equal("other prop at starboard", changed.Finding().Positions[0].Mounting!.Marks[^1].Label);
    }

    [Fact]
    public void The_same_prop_back_after_a_service_does_not_and_back_from_the_shop_does()
    {
        Fleet serviced = s_twins.With(Dock.Removed("2026-02-01T09:00", "p2", "starboard"), Dock.Mounted("2026-02-03T10:00", "p2", "starboard"));
        Assert.Equal([0, 0], Stretches(serviced));
        Assert.Equal([1, 0], Stretches(serviced.With(new RepitchProp(Dock.At("2026-02-02T10:00", "repitch"), "p2", 12))));

        TakePropBackFromShop back = new(Dock.At("2026-02-02T10:00", "back"), "p2");
        Assert.Equal([0, 0], Stretches(serviced.With(back)));
        Assert.Equal([1, 0], Stretches(serviced.With(back with { PitchInches = 14 })));
        Assert.Equal([0, 0], Stretches(serviced.With(back with { PitchInches = 14, Entry = Dock.At("2026-02-05T10:00", "papers written late") })));
    }

    [Fact]
    public void Work_on_the_other_sides_prop_while_it_is_fitted_opens_one_for_both() =>
        Assert.Equal([1, 1], Stretches(s_twins.With(new RepairProp(Dock.At("2026-02-02T10:00", "dressed"), "p2", ["edge_dressed"]))));

    [Theory]
    [InlineData(5500, 5450, null)] // within a step of the coarser gauge
    [InlineData(5500, 5440, 60)]
    [InlineData(5400, 5520, -120)]
    public void The_split_is_claimed_when_it_is_larger_than_the_coarser_gauges_step(double port, double starboard, int? split) =>
        Assert.Equal(split, s_twins.With(Both(port, starboard)).Finding().Split?.PortLessStarboardRpm);

    [Fact]
    public void A_split_at_part_throttle_or_held_by_a_limiter_is_not_claimed()
    {
        Assert.Null(s_twins.With(Both(3000, 3200) with { Throttle = "part" }).Finding().Split);
        Assert.Null(s_twins.With(Both(6300, 5800) with { Runs = [Dock.Run(22, 0, ("port", 6300, true), ("starboard", 5800, false))] }).Finding().Split);
        Assert.Null(s_twins.Finding().Split);
    }

    private static RunTrial Both(double port, double starboard) => Dock.Trial("2026-02-10T10:00", port) with
    {
        Runs = [Dock.Run(22, 0, ("port", port, false), ("starboard", starboard, false))],
    };

    private static IEnumerable<int> Stretches(Fleet twins) => twins.With(Both(5500, 5500)).Finding().Positions.Select(p => p.Mounting!.Trials.Single().Stretch);
}
