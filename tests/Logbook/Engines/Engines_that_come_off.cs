using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Engines;

public class Engines_that_come_off
{
    private static readonly RemoveEngine s_off = new(Dock.At("2026-02-02T10:00", "off"), "kea", "single", "e1", 140);

    [Fact]
    public void It_hangs_nowhere_and_its_prop_is_off_and_its_last_reading_is_its_own()
    {
        var off = Dock.OneBoat().With(s_off);
        Assert.Empty(off.History().Contradictions);
        Assert.Null(off.Finding().Positions.Single().Engine);
        Assert.Null(off.Finding().Positions.Single().Mounting);
        Assert.Equal(new DateOnly(2026, 2, 2), off.History().Mountings.Single().To?.Date());
        Assert.Equal([100, 140], off.History().Meters["e1"].Readings.Select(r => r.Hours));
    }

    [Fact]
    public void Hung_again_it_goes_on_with_its_hours_and_without_a_prop()
    {
        var again = Dock.OneBoat().With(s_off, Dock.Fitted("2026-03-02T10:00", hours: null));
        Assert.Equal(140, again.Finding().Positions.Single().EngineHours);
        Assert.Null(again.Finding().Positions.Single().Mounting);
    }

    [Fact]
    public void A_reading_with_an_engine_that_nobody_named_is_that_of_the_engine_on_record() =>
        Assert.Equal([100, 140], Dock.OneBoat().With(s_off with { Engine = null }).History().Meters["e1"].Readings.Select(r => r.Hours));

    [Fact]
    public void An_engine_that_was_not_there_is_asked_about()
    {
        var bare = new Fleet().With(Dock.Boat(), s_off);
        Assert.Equal([Dock.Id("off")], Assert.Single(bare.History().Contradictions).Entries);
        var other = Dock.OneBoat().With(Dock.Engine(engine: "e2"), s_off with { Engine = "e2" });
        var asked = Assert.Single(other.History().Contradictions);
        Assert.Equal(ContradictionKind.EngineNotThere, asked.Kind);
        Assert.Equal([Dock.Id("fit e1 kea 2026-01-05T08:02"), Dock.Id("off")], asked.Entries);
        Assert.Null(other.Finding().Positions.Single().Engine);
        Assert.Equal([100], other.History().Meters["e1"].Readings.Select(r => r.Hours)); // whose 140 h were they?
    }

    [Fact]
    public void It_is_taken_back_by_naming_the_engine()
    {
        var back = Dock.OneBoat().With(s_off, new Retract(Dock.At("2026-02-03T10:00", "back"), Dock.Id("off"), "did_not_happen", Engine: "e1"));
        Assert.Equal("p1", back.Mounting().Prop.Prop);
        Assert.Empty(back.History().Contradictions);
    }
}
