using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;

namespace FleetWake.Logbook.Tests.Hire;

public class Suspicion_of_a_part
{
    private static readonly Fleet s_chipped = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", "chipped"), Dock.Removed("2026-02-02T09:00"));

    [Fact]
    public void A_fit_given_to_a_prop_in_hand_clears_it_and_refitted_it_brings_nothing()
    {
        var back = s_chipped.With(Dock.Look("2026-02-02T10:00"), Dock.Mounted("2026-02-02T11:00"));
        Assert.Empty(back.Finding().Positions.Single().Carried);
        Assert.Equal(HireWord.InHire, Word(back));
    }

    [Fact]
    public void A_prop_that_was_off_and_is_back_is_told_of_once()
    {
        var back = s_chipped.With(Dock.Mounted("2026-02-02T11:00"));
        Assert.Single(HireStates.Of(back.Finding()).Reasons);
        Assert.Single(Attentions.Of(back.Finding()));
        Assert.Single(Outlook.Of(back.Finding(), default), d => d.Strike is not null);
    }

    [Fact]
    public void A_fit_given_to_another_prop_does_not_clear_the_one_that_comes_back()
    {
        var back = s_chipped.With(
            Dock.Prop(prop: "p2"), Dock.Mounted("2026-02-02T11:00", "p2"), Dock.Look("2026-02-02T12:00"),
            Dock.Removed("2026-02-03T09:00", "p2"), Dock.Mounted("2026-02-03T10:00"));
        Assert.Empty(back.Finding().Positions.Single().OpenStrikes);
        Assert.Equal("Prop p1 was struck (chipped) on kea on 2026-02-01, and no inspection since says fit.", HireStates.Of(back.Finding()).Reasons.Single().Sentence);
    }

    [Fact]
    public void A_scuff_that_was_looked_over_stays_released_where_the_prop_goes_and_can_be_released_there()
    {
        var scuffed = Two().With(Dock.Strike("2026-02-01T10:00", "scuffed"));
        var looked = Moved(scuffed.With(States_of_hire.Short("2026-02-01T11:00", "nothing_new")));
        Assert.Equal(HireWord.InHire, Word(looked, "tui"));
        Assert.Empty(Attentions.Of(looked.Finding("tui")));
        Assert.DoesNotContain(Outlook.Of(looked.Finding("tui"), default), d => d.Strike is not null);

        var not = Moved(scuffed);
        Assert.Equal(
            (HireWord.LookFirst, "Prop p1 was struck (scuffed) on kea on 2026-02-01, and no look since found it harmless.", "A short look that sees no damage, recorded."),
            (Word(not, "tui"), HireStates.Of(not.Finding("tui")).Reasons.Single().Sentence, HireStates.Of(not.Finding("tui")).Reasons.Single().ReleasedBy));
        Assert.Equal(HireWord.InHire, Word(not.With(States_of_hire.Short("2026-02-04T11:00", "nothing_new") with { Boat = "tui" }), "tui"));
    }

    [Fact]
    public void A_cracked_prop_with_water_in_the_oil_is_suspected_as_both_and_line_at_the_seal_stays_with_the_engine()
    {
        static SuspectPart[] Carried(string verdict, params string[] marks) =>
            [.. Moved(Two().With(Dock.Look("2026-02-01T10:00", verdict, marks: marks))).With(Dock.Fitted("2026-02-03T08:00", boat: "tui", hours: 150), Dock.Mounted("2026-02-03T11:00", boat: "tui"))
                .Finding("tui").Positions.Single().Carried.Select(c => c.Part)];
        Assert.Equal([SuspectPart.Prop, SuspectPart.LowerUnit], Carried("take_off", "crack", "water_in_oil"));
        Assert.Equal([SuspectPart.Prop, SuspectPart.LowerUnit], Carried("repair", "line_at_seal"));
        Assert.Equal([SuspectPart.LowerUnit], Carried("repair", "water_in_oil"));
        Assert.Equal([SuspectPart.Prop], Carried("take_off"));
        Assert.Equal(HireWord.Out, Word(Moved(Two().With(Dock.Look("2026-02-01T10:00", "take_off", marks: ["crack", "water_in_oil"]))), "tui"));
    }

    [Fact]
    public void A_stainless_prop_elsewhere_is_cleared_by_a_fit_that_names_the_prop()
    {
        var moved = Moved(Two("stainless").With(Dock.Strike("2026-02-01T10:00", "chipped")));
        Assert.Equal("An inspection of the prop on this boat with the verdict fit, with the prop named among what was seen.", HireStates.Of(moved.Finding("tui")).Reasons.Single().ReleasedBy);
        Assert.Equal(HireWord.InHire, Word(moved.With(Fit("prop")), "tui"));
        Assert.Equal(HireWord.Out, Word(moved.With(Fit()), "tui"));
        Assert.Equal(HireWord.Out, Word(moved.With(Fit("shaft", "gear_oil")), "tui"));
    }

    [Theory]
    [InlineData("bent")]
    [InlineData("chipped")] // its prop stayed, and may have been stainless
    public void A_lower_unit_is_cleared_by_a_fit_that_saw_shaft_and_gear_oil(string severity)
    {
        var moved = Two().With(
            Dock.Strike("2026-02-01T10:00", severity), Dock.Fitted("2026-02-02T10:00", boat: "tui", hours: 150), Dock.Mounted("2026-02-02T11:00", prop: "p9", boat: "tui"));
        Assert.Equal(HireWord.Out, Word(moved, "tui"));
        Assert.Equal(HireWord.Out, Word(moved.With(Fit("prop")), "tui"));
        Assert.Equal(HireWord.InHire, Word(moved.With(Fit("shaft", "gear_oil")), "tui"));
        Assert.Contains(
            "the inspection of 2026-02-04 that says fit does not say that it saw shaft and gear oil",
            HireStates.Of(moved.With(Fit("prop")).Finding("tui")).Reasons.Single().Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_prop_that_was_struck_blocks_at_a_position_that_the_boat_does_not_have()
    {
        var moved = Two().With(Dock.Strike("2026-02-01T10:00", "chipped"), Dock.Removed("2026-02-02T10:00"), Dock.Mounted("2026-02-03T10:00", position: "port", boat: "tui"));
        Assert.Equal(HireWord.Out, Word(moved, "tui"));
    }

    [Fact]
    public void Damage_that_a_short_look_saw_goes_with_the_prop()
    {
        var moved = Moved(Two().With(States_of_hire.Short("2026-02-01T10:00", "damage")));
        Assert.Equal("Prop p1 was looked over (damage) on kea on 2026-02-01, and no inspection since says fit.", HireStates.Of(moved.Finding("tui")).Reasons.Single().Sentence);
        Assert.Equal(HireWord.InHire, Word(moved.With(Fit()), "tui"));
    }

    private static Fleet Two(string material = "aluminium") => new Fleet().With(
        Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop() with { Material = material }, Dock.Mounted(), Dock.Boat(boat: "tui"));

    private static Fleet Moved(Fleet fleet) => fleet.With(Dock.Removed("2026-02-02T10:00"), Dock.Mounted("2026-02-03T10:00", boat: "tui"));

    private static Inspect Fit(params string[] seen) => Dock.Look("2026-02-04T10:00") with { Boat = "tui", Seen = seen.Length == 0 ? null : seen };

    private static HireWord Word(Fleet fleet, string boat = "kea") => HireStates.Of(fleet.Finding(boat)).Word;
}
