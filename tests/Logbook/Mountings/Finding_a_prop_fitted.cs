using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Tests.Mountings;

public class Finding_a_prop_fitted
{
    private static readonly Fleet s_bare = new Fleet().With(Dock.Boat(), Dock.Boat(boat: "tui"), Dock.Engine(), Dock.Fitted(), Dock.Prop(), Dock.Prop(prop: "p2"));

    private static readonly FindFitted s_found = Found("2026-02-01T10:00", "p1");

    [Fact]
    public void It_begins_a_mounting_that_nobody_recorded()
    {
        var found = s_bare.With(s_found, Dock.Trial("2026-02-02T10:00", 5500, 120));
        Assert.Empty(found.History().Contradictions);
        Assert.True(found.Mounting().Found);
        Assert.Equal("p1", found.Mounting().Prop.Prop);
        Assert.Single(found.Mounting().Trials);
        Assert.Equal("p1 found fitted", found.Mounting().Marks[0].Label);
    }

    [Fact]
    public void What_was_on_record_there_goes_on()
    {
        var same = s_bare.With(Dock.Mounted(), s_found, Found("2026-03-01T10:00", null));
        Assert.Empty(same.History().Contradictions);
        Assert.Equal(new DateOnly(2026, 1, 5), same.Mounting().FittedOn);
        Assert.False(same.Mounting().Found);
    }

    [Fact]
    public void Another_than_was_on_record_is_asked_about_and_counts()
    {
        var other = s_bare.With(Dock.Mounted(), Found("2026-02-01T10:00", "p2"));
        var asked = Assert.Single(other.History().Contradictions);
        Assert.Equal(ContradictionKind.FoundAnotherProp, asked.Kind);
        Assert.Equal([Dock.Id("mount p1 kea 2026-01-05T09:00"), Dock.Id("found 2026-02-01T10:00")], asked.Entries);
        Assert.Equal("p2", other.Mounting().Prop.Prop);
    }

    [Fact]
    public void One_whose_tag_nobody_could_read_is_a_mounting_of_a_prop_not_known_and_never_in_two_places()
    {
        var unread = s_bare.With(Found("2026-02-01T10:00", null), Found("2026-02-01T11:00", null, "tui"), Dock.Trial("2026-02-02T10:00", 5500, 120));
        Assert.Empty(unread.History().Contradictions);
        Assert.Empty(unread.History("tui").Contradictions);
        Assert.Equal((FoundFitted.NotKnown, null), (unread.Mounting().Prop.Prop, unread.Mounting().Prop.PitchInches));
        Assert.Null(unread.Mounting().Trials.Single().SlipPercent);
        Assert.Equal("a prop found fitted", unread.Mounting().Marks[0].Label);
    }

    [Fact]
    public void A_tag_read_later_names_the_prop_of_the_mounting()
    {
        var unread = s_bare.With(Found("2026-02-01T10:00", null));
        var named = unread.With(Found("2026-03-01T10:00", "p2"));
        Assert.Equal(("p2", new DateOnly(2026, 2, 1)), (named.Mounting().Prop.Prop, named.Mounting().FittedOn));
        Assert.Equal(unread.Mounting().Mounting, named.Mounting().Mounting);
        var off = unread.With(Dock.Removed("2026-03-01T10:00", "p2"));
        Assert.Empty(off.History().Contradictions);
        Assert.Equal("p2", off.History().Mountings.Single().Fitted.Prop);
    }

    [Fact]
    public void A_prop_fitted_over_one_not_known_is_asked_about()
    {
        var over = s_bare.With(Found("2026-02-01T10:00", null), Dock.Mounted("2026-03-01T10:00", "p2"));
        Assert.StartsWith("A prop whose tag nobody read was still on record", Assert.Single(over.History().Contradictions).Question, StringComparison.Ordinal);
    }

    [Fact]
    public void One_found_on_another_boat_is_in_two_places_until_somebody_took_it_off()
    {
        var both = s_bare.With(Dock.Mounted(), Found("2026-02-01T10:00", "p1", "tui"));
        Assert.Equal(ContradictionKind.PropInTwoPlaces, Assert.Single(both.History("tui").Contradictions).Kind);
        Assert.Single(both.History().Contradictions);
        Assert.Empty(both.With(Dock.Removed("2026-01-20T10:00")).History().Contradictions);
    }

    [Fact]
    public void It_is_amended_and_taken_back_like_any_record()
    {
        var amended = s_bare.With(s_found, s_found with { Entry = Dock.At("2026-02-01T10:00", "amended", "found 2026-02-01T10:00"), Prop = "p2" });
        Assert.Equal("p2", amended.Mounting().Prop.Prop);
        Assert.Empty(amended.History().Contradictions);
        var back = s_bare.With(s_found, new Retract(Dock.At("2026-02-02T10:00", "back"), Dock.Id("found 2026-02-01T10:00"), "did_not_happen", Prop: "p1"));
        Assert.Empty(back.History().Mountings);
    }

    private static FindFitted Found(string time, string? prop, string boat = "kea") => new(Dock.At(time, $"found {time}"), boat, "single", prop);
}
