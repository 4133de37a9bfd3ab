namespace FleetWake.Logbook.Tests.Boats;

/// <summary>A record may lie on a boat's log and on a prop's, and its correction on a third.</summary>
public class Corrections_across_logs
{
    private static readonly Fleet s_two = Dock.OneBoat().With(Dock.Boat(boat: "tui"), Dock.Prop(prop: "p2"));
    private static readonly string s_mount = "mount p1 kea 2026-01-05T09:00";

    [Fact]
    public void A_tag_typed_wrong_is_amended_and_nobody_is_asked()
    {
        var amended = s_two.With(Dock.Mounted(prop: "p2") with { Entry = Dock.At("2026-01-05T09:00", "amended", s_mount) });
        Assert.Empty(amended.History().Contradictions);
        Assert.Equal("p2", amended.Finding().Positions.Single().Mounting!.Prop.Prop);
    }

    [Fact]
    public void A_prop_typed_onto_the_wrong_boat_is_amended_onto_the_right_one()
    {
        var amended = s_two.With(Dock.Mounted(boat: "tui") with { Entry = Dock.At("2026-01-05T09:00", "amended", s_mount) });
        Assert.Empty(amended.History().Contradictions);
        Assert.Empty(amended.History("tui").Contradictions);
        Assert.Empty(amended.History().Mountings);
        Assert.Single(amended.History("tui").Mountings);
    }

    [Theory]
    [InlineData("kea", null)]
    [InlineData(null, "p1")]
    public void A_mounting_is_taken_back_by_naming_its_boat_or_its_prop(string? boat, string? prop)
    {
        var back = s_two.With(new Retract(Dock.At("2026-02-01T09:00", "back"), Dock.Id(s_mount), "did_not_happen", boat, null, prop));
        Assert.Empty(back.History().Mountings);
        Assert.Empty(back.History().Contradictions);
    }

    /// <summary>A prop on record on both ties their logs together; a typing slip must still free nobody.</summary>
    [Theory]
    [InlineData("tui", null)]
    [InlineData(null, "p1")]
    public void A_retraction_that_names_the_wrong_boat_frees_nothing_and_is_asked_about(string? boat, string? prop)
    {
        var struck = s_two.With(Dock.Mounted("2026-01-20T09:00", boat: "tui"), Dock.Strike("2026-02-01T09:00"));
        var slip = struck.With(new Retract(Dock.At("2026-02-02T09:00", "slip"), Dock.Id("strike"), "did_not_happen", boat, null, prop));
        Assert.Single(slip.Finding().Positions.Single().OpenStrikes);
        Assert.Contains(slip.History("tui").Contradictions, c => c.Kind == ContradictionKind.NothingToCorrect);
        var named = slip.With(new Retract(Dock.At("2026-02-02T09:05", "again"), Dock.Id("strike"), "did_not_happen", "kea"));
        Assert.Empty(named.Finding().Positions.Single().OpenStrikes);
        var undone = named.With(new Retract(Dock.At("2026-02-02T09:10", "undone"), Dock.Id("again"), "typed_wrong", "tui"));
        Assert.Empty(undone.Finding().Positions.Single().OpenStrikes);
    }

    [Fact]
    public void An_engine_is_taken_back_by_naming_the_engine()
    {
        var back = s_two.With(new Retract(Dock.At("2026-02-01T09:00", "back"), Dock.Id("fit e1 kea 2026-01-05T08:02"), "did_not_happen", Engine: "e1"));
        Assert.Empty(back.History().Engines);
    }

    [Fact]
    public void A_correction_of_nothing_is_asked_about_once_until_its_record_arrives()
    {
        var early = s_two.With(Dock.Mounted("2026-02-01T09:00", "p2") with { Entry = Dock.At("2026-02-01T09:00", "amended", "not yet here") });
        Assert.Single(early.History().Contradictions, c => c.Kind == ContradictionKind.NothingToCorrect);
        var arrived = early.With(Dock.Mounted("2026-02-01T08:00", "p2") with { Entry = Dock.At("2026-02-01T08:00", "not yet here") });
        Assert.DoesNotContain(arrived.History().Contradictions, c => c.Kind == ContradictionKind.NothingToCorrect);
        Assert.Equal(2, arrived.History().Mountings.Count);
    }

    /// <summary>Nothing ties a strike to the other boat, so its record stands on both until the first is taken back; the question says so.</summary>
    [Fact]
    public void A_strike_amended_onto_another_boat_stands_on_both_and_is_asked_about()
    {
        var amended = s_two.With(Dock.Strike("2026-02-01T09:00"), Dock.Strike("2026-02-01T09:00", boat: "tui") with { Entry = Dock.At("2026-02-01T09:00", "amended", "strike") });
        Assert.Single(amended.Finding("tui").Contradictions, c => c.Kind == ContradictionKind.NothingToCorrect);
        Assert.Single(amended.Finding().Positions.Single().OpenStrikes);
        Assert.Single(amended.Finding("tui").Positions.Single().OpenStrikes);
    }

    [Fact]
    public void An_amended_sheet_is_the_same_mounting()
    {
        var amended = s_two.With(
            Dock.Mounted() with { Entry = Dock.At("2026-01-05T09:00", "first", s_mount), SlotsAdvanced = 2 },
            Dock.Mounted() with { Entry = Dock.At("2026-01-05T09:00", "second", "first") with { EnteredAt = "2026-02-01T10:00" }, SlotsAdvanced = 0 });
        Assert.Equal(0, amended.History().Mountings.Single().Fitted.SlotsAdvanced);
        Assert.Equal(s_two.Finding().Positions.Single().Mounting!.Mounting, amended.Finding().Positions.Single().Mounting!.Mounting);
    }

    /// <summary>Docks write whole minutes: a swap is two records of one minute, and a correction typed later must not turn them about.</summary>
    [Fact]
    public void A_corrected_record_keeps_its_place_among_those_of_its_minute()
    {
        var off = Dock.Removed("2026-02-01T09:00") with { Entry = Dock.At("2026-02-01T09:00", "off") with { Count = 5 } };
        var on = Dock.Mounted("2026-02-01T09:00", "p2") with { Entry = Dock.At("2026-02-01T09:00", "on") with { Count = 6 } };
        var swapped = s_two.With(off, on);
        var corrected = swapped.With(off with { Entry = Dock.At("2026-02-01T09:00", "corrected", "off") with { Count = 20 }, Why = "worn" });
        Assert.Empty(swapped.History().Contradictions);
        Assert.Empty(corrected.History().Contradictions);
        Assert.Equal("p2", corrected.Mounting().Prop.Prop);
    }

    [Fact]
    public void A_registration_amended_away_holds_the_boats_records_again()
    {
        var held = s_two.With(Dock.Strike("2026-02-01T09:00"), new Retract(Dock.At("2026-02-01T09:00", "back"), Dock.Id("boat kea"), "did_not_happen", "kea")).Finding();
        Assert.Null(held.Registered);
        Assert.Equal(3, held.Held);
    }
}
