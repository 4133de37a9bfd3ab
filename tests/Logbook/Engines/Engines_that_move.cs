namespace FleetWake.Logbook.Tests.Engines;

public class Engines_that_move
{
    private static readonly Fleet s_two = Dock.OneBoat().With(Dock.Boat(boat: "tui"), Dock.Engine(engine: "e2"), Dock.Prop(prop: "p2"));

    [Fact]
    public void Hours_go_with_the_engine_to_another_boat()
    {
        var moved = s_two.With(Dock.Hours("2026-02-01T10:00", 150), Dock.Fitted("2026-02-02T10:00", boat: "tui", hours: null));
        Assert.Null(moved.Finding().Positions.Single().Engine);
        Assert.Equal(150, moved.Finding("tui").Positions.Single().EngineHours);
    }

    [Fact]
    public void An_engine_that_goes_to_another_boat_takes_its_prop_along_and_nobody_is_asked()
    {
        var moved = s_two.With(
            Dock.Fitted("2026-02-02T10:00", boat: "tui", hours: null),
            Dock.Fitted("2026-02-03T10:00", "e2", hours: 10),
            Dock.Mounted("2026-02-03T11:00", "p2"));
        Assert.Empty(moved.History().Contradictions);
        Assert.Equal(["p1", "p2"], moved.History().Mountings.Select(m => m.Fitted.Prop));
        Assert.Equal(new DateOnly(2026, 2, 2), moved.History().Mountings[0].To!.Date());
        Assert.Equal("p2", moved.Finding().Positions.Single().Mounting!.Prop.Prop);
    }

    [Fact]
    public void An_engine_exchanged_for_another_ends_the_mounting()
    {
        var exchanged = s_two.With(Dock.Fitted("2026-02-03T10:00", "e2", hours: 10));
        Assert.Null(exchanged.Finding().Positions.Single().Mounting);
        Assert.Equal(10, exchanged.Finding().Positions.Single().EngineHours);
        Assert.Empty(exchanged.History().Contradictions);
    }

    [Fact]
    public void An_engine_moved_across_the_transom_takes_its_prop_along()
    {
        var twin = new Fleet().With(
            Dock.Boat(positions: ["port", "starboard"]), Dock.Engine(), Dock.Fitted(position: "port"), Dock.Prop(), Dock.Mounted(position: "port"),
            Dock.Fitted("2026-02-02T10:00", position: "starboard", hours: 120));
        Assert.Equal(new DateOnly(2026, 2, 2), twin.History().Mountings.Single().To?.Date());
        Assert.Null(twin.Finding().Positions[0].Engine);
        Assert.Equal(120, twin.Finding().Positions[1].EngineHours);
    }

    [Fact]
    public void An_engine_told_twice_to_hang_where_it_hangs_keeps_its_prop()
    {
        var twice = s_two.With(Dock.Fitted("2026-02-02T10:00", hours: 120));
        Assert.Null(twice.History().Mountings.Single().To);
        Assert.Equal(120, twice.Finding().Positions.Single().EngineHours);
    }

    [Fact]
    public void An_engine_hung_after_the_prop_was_told_of_leaves_the_prop_on()
    {
        var late = new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Prop(), Dock.Mounted(), Dock.Fitted("2026-02-02T10:00"));
        Assert.Equal("p1", late.Finding().Positions.Single().Mounting!.Prop.Prop);
        var moved = late.With(Dock.Boat(boat: "tui"), Dock.Fitted("2026-03-02T10:00", boat: "tui"));
        Assert.Null(moved.Finding().Positions.Single().Mounting);
    }

    [Fact]
    public void A_move_that_is_taken_back_brings_engine_and_prop_back()
    {
        var moved = s_two.With(Dock.Fitted("2026-02-02T10:00", boat: "tui", hours: null));
        var back = moved.With(new Retract(Dock.At("2026-02-03T10:00", "back"), Dock.Id("fit e1 tui 2026-02-02T10:00"), "did_not_happen", "tui"));
        Assert.Equal("p1", back.Finding().Positions.Single().Mounting!.Prop.Prop);
        Assert.Null(back.Finding("tui").Positions.Single().Engine);
    }

    /// <summary>Neither boat asks: p1 was off tui since its engine went to moa, though no record of kea and none of p1 names moa.</summary>
    [Fact]
    public void An_engine_that_went_to_a_third_boat_ended_the_mounting_for_every_boat_the_prop_goes_to()
    {
        var third = new Fleet().With(
            Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop(), Dock.Boat(boat: "tui"), Dock.Boat(boat: "moa"), Dock.Engine(engine: "e9"),
            Dock.Fitted(engine: "e9", boat: "tui"), Dock.Mounted(boat: "tui"), Dock.Fitted("2026-02-01T10:00", "e9", boat: "moa", hours: 120),
            Dock.Mounted("2026-02-03T09:00"), Dock.Strike("2026-02-10T10:00", boat: "tui"));
        Assert.Empty(third.History().Contradictions);
        Assert.Empty(third.History("tui").Contradictions);
        Assert.Empty(third.Finding().Positions.Single().Carried);
        Assert.Equal(["tui"], third.History().Elsewhere.Select(e => e.Boat));
    }

    [Fact]
    public void A_reading_on_another_boat_belongs_to_the_engine_that_hung_there_then()
    {
        var moved = s_two.With(
            Dock.Strike("2026-02-01T10:00") with { Hours = 140 },
            Dock.Fitted("2026-02-02T10:00", boat: "tui", hours: null),
            Dock.Strike("2026-02-10T10:00", label: "later") with { Hours = 9000 }); // no engine hangs on kea any more
        Assert.Equal([100, 140], moved.History("tui").Meters["e1"].Readings.Select(r => r.Hours));
        Assert.Empty(moved.History("tui").Meters["e1"].SetAside);
    }
}
