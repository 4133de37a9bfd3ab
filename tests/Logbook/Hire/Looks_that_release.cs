using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Tests.Policies;

namespace FleetWake.Logbook.Tests.Hire;

public class Looks_that_release
{
    [Fact]
    public void The_look_at_a_return_that_found_the_scuff_releases_nothing_and_a_mechanics_look_does()
    {
        var found = Struck("scuffed").With(States_of_hire.Short("2026-02-01T10:01", "mark") with { Moment = "after_hire" });
        Assert.Equal(HireWord.LookFirst, Word(found));
        Assert.Equal(HireWord.InHire, Word(found.With(States_of_hire.Short("2026-02-01T11:00", "mark"))));
    }

    [Fact]
    public void Damage_that_nobody_typed_a_strike_for_keeps_the_boat_until_a_fit()
    {
        var damaged = Dock.OneBoat().With(States_of_hire.Short("2026-02-01T10:00", "damage") with { Moment = "after_hire" });
        var reason = HireStates.Of(damaged.Finding()).Reasons.Single();
        Assert.Equal(
            (HireWord.LookFirst, "The short look after a hire on 2026-02-01 saw damage, and no inspection since says fit.", "An inspection after that look with the verdict fit."),
            (reason.Word, reason.Sentence, reason.ReleasedBy));
        Assert.Equal((AttentionKind.Damage, true, reason.ReleasedBy), Assert.Single(Attentions.Of(damaged.Finding())) is var a ? (a.Kind, a.Blocks, a.ReleasedBy) : default);
        Assert.Equal(HireWord.LookFirst, Word(damaged.With(States_of_hire.Short("2026-02-01T11:00", "nothing_new"))));
        Assert.Equal(HireWord.InHire, Word(damaged.With(Dock.Look("2026-02-02T10:00"))));
        Assert.Empty(Attentions.Of(damaged.With(Dock.Look("2026-02-02T10:00")).Finding()));
    }

    [Fact]
    public void Damage_is_lifted_at_the_dock_and_said_all_the_same()
    {
        var lifted = Dock.OneBoat().With(States_of_hire.Short("2026-02-01T10:00", "damage"), Back("2026-02-01T12:00"));
        Assert.Equal(HireWord.InHire, Word(lifted));
        Assert.EndsWith("Put back in hire on 2026-02-01 all the same.", Attentions.Of(lifted.Finding()).Single().Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Damage_beside_a_strike_that_accounts_for_it_is_said_once() =>
        Assert.Single(HireStates.Of(Struck("bent").With(States_of_hire.Short("2026-02-01T11:00", "damage")).Finding()).Reasons);

    [Fact]
    public void A_fit_that_saw_neither_prop_nor_lower_unit_clears_nothing()
    {
        var oil = Struck("bent").With(Dock.Look("2026-02-02T10:00") with { Seen = ["gear_oil"] });
        Assert.Equal(HireWord.Out, Word(oil));
        Assert.Equal(
            "Strike on rock (bent) on 2026-02-01, and the inspection of 2026-02-02 that says fit does not say that it saw the prop. Only one that does clears it.",
            Attentions.Of(oil.Finding()).Single().Sentence);
    }

    [Fact]
    public void A_fit_without_gear_oil_is_not_denied_but_named()
    {
        var fit = new Fleet().With(
            Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop() with { Material = "stainless" }, Dock.Mounted(), Dock.Strike("2026-02-01T10:00", "bent"), Dock.Look("2026-02-02T10:00"));
        var sentence = Attentions.Of(fit.Finding()).Single().Sentence;
        Assert.Contains("the inspection of 2026-02-02 that says fit does not say that it saw shaft and gear oil. Only one that does clears it.", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("no inspection since", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_scuff_that_was_lifted_still_says_that_a_short_look_clears_it()
    {
        var sentence = Attentions.Of(Struck("scuffed").With(Back("2026-02-01T12:00")).Finding()).Single().Sentence;
        Assert.Equal("Strike on rock (scuffed) on 2026-02-01, and no look since found it harmless. A short look that sees no damage clears it for hire. Put back in hire on 2026-02-01 all the same.", sentence);
    }

    [Fact]
    public void Nobody_lifts_what_was_not_known_by_then()
    {
        var received = Dock.Arrived.ReceivedAt;
        Fleet Told(int strikeAfter) => Dock.OneBoat()
            .With(Fleet.Accepted(Back("2026-02-01T17:00"), Dock.Arrived with { ReceivedAt = received }))
            .With(Fleet.Accepted(Dock.Strike("2026-02-01T10:00"), Dock.Arrived with { ReceivedAt = received.AddDays(strikeAfter) }));
        Assert.Equal(HireWord.Out, Word(Told(2)));
        Assert.Equal(HireWord.InHire, Word(Told(-2)));
    }

    [Fact]
    public void A_verdict_is_judged_by_the_material_of_the_prop_that_was_looked_at()
    {
        var strict = Setting_a_policy.Policy(new SetHireStates(Dock.At("2026-01-01T08:00", "table"), [new("out", null, "repair", "stainless")]));
        var swapped = new Fleet().With(
            Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop() with { Material = "stainless" }, Dock.Prop(prop: "p2"), Dock.Mounted(), Dock.Look("2026-02-01T10:00", "repair"),
            Dock.Removed("2026-02-02T09:00"), Dock.Mounted("2026-02-02T10:00", "p2"));
        Assert.Equal(HireWord.Out, HireStates.Of(swapped.Finding(), strict).Word);
    }

    [Theory]
    [InlineData("watch", "A later inspection with the verdict fit.")]
    [InlineData("repair", "The repair, and a later inspection with the verdict fit.")]
    [InlineData("take_off", "The prop off, and a later inspection with the verdict fit.")]
    public void What_the_table_keeps_needs_a_person_who_is_told_what_releases_it(string verdict, string releasedBy)
    {
        var strict = Setting_a_policy.Policy(new SetHireStates(Dock.At("2026-01-01T08:00", "table"), [new("out", null, verdict)]));
        var attention = Assert.Single(Attentions.Of(Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", verdict)).Finding(), strict));
        Assert.Equal((true, releasedBy), (attention.Blocks, attention.ReleasedBy));
    }

    [Fact]
    public void A_watch_that_keeps_nobody_needs_nobody() => Assert.Empty(Attentions.Of(Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", "watch")).Finding()));

    private static Fleet Struck(string severity) => Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", severity));

    private static ReturnToHire Back(string time) => new(Dock.At(time, "back " + time), "kea", "office");

    private static HireWord Word(Fleet fleet) => HireStates.Of(fleet.Finding()).Word;
}
