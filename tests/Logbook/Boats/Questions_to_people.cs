using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Boats;

public class Questions_to_people
{
    private static readonly Fleet s_two = Dock.OneBoat().With(Dock.Boat(boat: "tui"), Dock.Prop(prop: "p2"));

    [Fact]
    public void A_boat_whose_records_agree_asks_nothing() => Assert.Empty(Dock.OneBoat().History().Contradictions);

    [Fact]
    public void A_prop_on_two_boats_is_one_question_that_both_boats_ask()
    {
        var both = s_two.With(Dock.Mounted("2026-02-01T09:00", boat: "tui"));
        var asked = Asked(both, ContradictionKind.PropInTwoPlaces);
        Assert.Equal(asked.Question, both.History("tui").Contradictions.Single(c => c.Kind == ContradictionKind.PropInTwoPlaces).Question);
        Assert.Equal([Dock.Id("mount p1 kea 2026-01-05T09:00"), Dock.Id("mount p1 tui 2026-02-01T09:00")], asked.Entries);
    }

    [Fact]
    public void A_removal_told_late_settles_a_prop_on_two_boats()
    {
        var both = s_two.With(Dock.Mounted("2026-02-01T09:00", boat: "tui"));
        Assert.Empty(both.With(Dock.Removed("2026-01-31T09:00")).History().Contradictions);
        Assert.Empty(both.With(Dock.Removed("2026-01-31T09:00")).History("tui").Contradictions);
    }

    /// <summary>Docks write whole minutes: what came off in the minute in which it went on elsewhere was never in two places.</summary>
    [Fact]
    public void A_prop_that_changes_boats_within_a_minute_by_two_phones_is_not_asked_about()
    {
        var off = Fleet.Accepted(Dock.Removed("2026-02-01T09:00"), Dock.Arrived with { Device = "phone-2" });
        var moved = s_two.With(off).With(Dock.Mounted("2026-02-01T09:00", boat: "tui"));
        Assert.Empty(moved.History().Contradictions);
        Assert.Empty(moved.History("tui").Contradictions);
    }

    [Fact]
    public void A_prop_at_two_places_of_one_boat_is_asked_about()
    {
        var twin = new Fleet().With(Dock.Boat(positions: ["port", "starboard"]), Dock.Mounted(position: "port"), Dock.Mounted("2026-01-05T10:00", position: "starboard"));
        Asked(twin, ContradictionKind.PropInTwoPlaces);
    }

    [Fact]
    public void A_prop_fitted_over_another_is_asked_about_and_the_later_counts()
    {
        var over = s_two.With(Dock.Mounted("2026-02-01T09:00", "p2"));
        Assert.Equal([Dock.Id("mount p1 kea 2026-01-05T09:00"), Dock.Id("mount p2 kea 2026-02-01T09:00")], Asked(over, ContradictionKind.PropAlreadyFitted).Entries);
        Assert.Equal("p2", over.Finding().Positions.Single().Mounting!.Prop.Prop);
    }

    [Fact]
    public void Taking_off_what_is_not_there_is_asked_about()
    {
        Spec.Given(Dock.Boat()).When(Dock.Removed("2026-02-01T09:00")).ThenAsks("kea", ContradictionKind.NoPropToRemove);
        Spec.Given(Dock.Boat(), Dock.Mounted()).When(Dock.Removed("2026-02-01T09:00", "p2")).ThenAsks("kea", ContradictionKind.NoPropToRemove);
        Spec.Given(Dock.Boat(), Dock.Mounted()).When(Dock.Removed("2026-02-01T09:00", null)).ThenAsks("kea");
    }

    [Fact]
    public void A_trial_without_a_prop_is_asked_about_until_the_mounting_is_told_late()
    {
        var bare = new Fleet().With(Dock.Boat(), Dock.Trial("2026-02-01T09:00", 5500));
        Asked(bare, ContradictionKind.TrialWithoutProp);
        Assert.Empty(bare.With(Dock.Mounted()).History().Contradictions);
    }

    [Fact]
    public void A_position_that_the_boat_does_not_have_is_asked_about()
    {
        Spec.Given(Dock.Boat()).When(Dock.Strike("2026-02-01T09:00", position: "port")).ThenAsks("kea", ContradictionKind.NoSuchPosition);
        var trial = Dock.Trial("2026-02-01T09:00", 5500);
        Spec.Given(Dock.Boat(), Dock.Mounted()).When(trial with { Meters = [new("port", 120)] }).ThenAsks("kea", ContradictionKind.NoSuchPosition);
        Spec.Given().When(Dock.Strike("2026-02-01T09:00", position: "port")).ThenAsks("kea");
        Spec.Given(Dock.Boat()).When(new TakeDuty(Dock.At("2026-02-01T09:00", "taken"), "kea", "grease", "port")).ThenAsks("kea", ContradictionKind.NoSuchPosition);
        Spec.Given(Dock.Boat()).When(new DoDuty(Dock.At("2026-02-01T09:00", "done"), "kea", "grease", "port")).ThenAsks("kea", ContradictionKind.NoSuchPosition);
        Spec.Given(Dock.Boat()).When(new DoDuty(Dock.At("2026-02-01T09:00", "done"), "kea", "grease")).ThenAsks("kea");
    }

    [Fact]
    public void Registered_twice_with_other_content_is_asked_about_for_boat_engine_and_prop()
    {
        Asked(s_two.With(Dock.Boat() with { Entry = Dock.At("2026-02-01T09:00", "again"), Name = "Kea II" }), ContradictionKind.RegisteredTwice);
        Asked(s_two.With(Dock.Engine() with { Entry = Dock.At("2026-02-01T09:00", "again"), GearRatio = 2.33 }), ContradictionKind.RegisteredTwice);
        Asked(s_two.With(Dock.Prop() with { Entry = Dock.At("2026-02-01T09:00", "again"), PitchInches = 15 }), ContradictionKind.RegisteredTwice);
    }

    [Fact]
    public void Registered_more_often_than_an_answer_names_entries_can_be_answered()
    {
        var often = s_two.With(Enumerable.Range(0, 9).Select(i => (ICommand)(Dock.Boat() with { Entry = Dock.At($"2026-02-0{i + 1}T09:00", $"again {i}"), Name = $"Kea {i}" })));
        var asked = Asked(often, ContradictionKind.RegisteredTwice);
        Assert.Equal([Dock.Id("boat kea"), Dock.Id("again 8")], asked.Entries);
        Assert.Contains("is registered 10 times", asked.Question, StringComparison.Ordinal);
    }

    [Fact]
    public void Registered_twice_alike_is_two_people_doing_their_work()
    {
        var again = s_two.With(
            Dock.Boat() with { Entry = Dock.At("2026-02-01T09:00", "boat again") }, Dock.Engine() with { Entry = Dock.At("2026-02-01T09:00", "engine again") });
        Assert.Empty(again.History().Contradictions);
    }

    [Fact]
    public void Of_two_registrations_the_first_to_happen_counts()
    {
        var earlier = Dock.Prop() with { Entry = Dock.At("2026-01-01T09:00", "earlier"), PitchInches = 15 };
        Assert.Equal(15, s_two.With(earlier).Finding().Positions.Single().Mounting!.Prop.PitchInches);
    }

    [Fact]
    public void A_reading_out_of_line_is_asked_about_beside_the_reading_it_contradicts()
    {
        var odd = s_two.With(Dock.Hours("2026-02-01T09:00", 110), Dock.Hours("2026-02-10T09:00", 5210), Dock.Hours("2026-02-20T09:00", 130));
        var asked = Asked(odd, ContradictionKind.HoursOutOfLine);
        Assert.Equal([Dock.Id("hours e1 2026-02-10T09:00")], asked.Entries);
        Assert.Contains("read 110 h on 2026-02-01 and 5210 h on 2026-02-10", asked.Question, StringComparison.Ordinal);
        Assert.Equal(130, odd.Finding().Positions.Single().EngineHours);
    }

    [Fact]
    public void A_repitch_on_the_props_own_log_asks_nothing_of_its_boats() =>
        Assert.Empty(s_two.With(new RepitchProp(Dock.At("2026-02-01T09:00", "repitch"), "p1", 12.5)).History().Contradictions);

    private static Contradiction Asked(Fleet fleet, ContradictionKind kind)
    {
        var asked = Assert.Single(fleet.History().Contradictions);
        Assert.Equal(kind, asked.Kind);
        Assert.EndsWith("?", asked.Question, StringComparison.Ordinal);
        return asked;
    }
}
