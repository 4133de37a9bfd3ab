using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Boats;

public class A_boats_home_and_plan
{
    private static readonly Fleet s_moved = Dock.OneBoat().With(new RehomeBoat(Dock.At("2026-03-01T09:00", "move"), "kea", "quay", "Pacific/Chatham", "silty", "sand"));

    [Fact]
    public void The_latest_home_counts()
    {
        var card = s_moved.Finding().Registered!;
        Assert.Equal(("quay", "Pacific/Chatham", WaterType.Silty, BottomKind.Sand), (card.Dock, card.DockZone, card.Water, card.Bottom));
        Assert.Equal(new DateOnly(2026, 1, 5), card.RegisteredOn);
        Assert.Equal("jetty", s_moved.With(new RehomeBoat(Dock.At("2026-04-01T09:00", "back home"), "kea", "jetty", Dock.Zone)).Finding().Registered!.Dock);
    }

    [Fact]
    public void A_home_told_late_moves_it_only_if_nothing_later_is_told() =>
        Assert.Equal("quay", s_moved.With(new RehomeBoat(Dock.At("2026-02-01T09:00", "late"), "kea", "slip", Dock.Zone)).Finding().Registered!.Dock);

    [Fact]
    public void Water_stays_where_nobody_said_otherwise_and_the_bottom_stays_with_its_dock()
    {
        var again = s_moved.With(new RehomeBoat(Dock.At("2026-04-01T09:00", "again"), "kea", "slip", Dock.Zone)).Finding().Registered!;
        Assert.Equal((WaterType.Silty, null), (again.Water, again.Bottom));
        Assert.Equal(BottomKind.Sand, s_moved.With(new RehomeBoat(Dock.At("2026-04-01T09:00", "again"), "kea", "quay", Dock.Zone)).Finding().Registered!.Bottom);
    }

    [Fact]
    public void The_plan_holds_the_last_line_of_each_position_and_use()
    {
        PlanProp Line(string time, string use, double pitch) => new(Dock.At(time, $"plan {time}"), "kea", "single", use, 13.25, pitch);
        var plan = Dock.OneBoat().With(Line("2026-02-02T09:00", "usual", 15), Line("2026-02-03T09:00", "towing", 11), Line("2026-02-01T09:00", "usual", 13)).Finding().PropPlan;
        Assert.Equal([(PropUse.Usual, 15), (PropUse.Towing, 11)], plan.Select(p => (p.Use, p.PitchInches)));
    }
}
