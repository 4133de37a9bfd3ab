using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Tests.Policies;

namespace FleetWake.Logbook.Tests.Hire;

public class States_of_hire
{
    [Theory]
    [InlineData("no_mark", HireWord.InHire)]
    [InlineData("scuffed", HireWord.LookFirst)]
    [InlineData("chipped", HireWord.Out)]
    [InlineData("bent", HireWord.Out)]
    [InlineData("broken", HireWord.Out)]
    public void A_strike_by_its_severity(string severity, HireWord word) => Assert.Equal(word, State(Struck(severity)).Word);

    [Theory]
    [InlineData("fit", HireWord.InHire)]
    [InlineData("watch", HireWord.InHire)]
    [InlineData("repair", HireWord.LookFirst)]
    [InlineData("take_off", HireWord.Out)]
    public void An_inspection_by_its_verdict(string verdict, HireWord word) =>
        Assert.Equal(word, State(Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", verdict))).Word);

    [Theory]
    [InlineData("scuffed", "nothing_new", HireWord.InHire)]
    [InlineData("scuffed", "mark", HireWord.InHire)]
    [InlineData("scuffed", "damage", HireWord.LookFirst)]
    [InlineData("chipped", "nothing_new", HireWord.Out)]
    public void A_short_look_releases_a_scuff_and_nothing_heavier(string severity, string seen, HireWord word) =>
        Assert.Equal(word, State(Struck(severity).With(Short("2026-02-01T11:00", seen))).Word);

    [Fact]
    public void A_short_look_from_before_releases_nothing_and_damage_seen_since_takes_it_back()
    {
        Assert.Equal(HireWord.LookFirst, State(Struck("scuffed").With(Short("2026-02-01T09:00", "nothing_new"))).Word);
        Assert.Equal(HireWord.LookFirst, State(Struck("scuffed").With(Short("2026-02-01T11:00", "nothing_new"), Short("2026-02-01T12:00", "damage"))).Word);
    }

    [Fact]
    public void A_scuff_that_the_operator_calls_out_needs_an_inspection()
    {
        var strict = Setting_a_policy.Policy(new SetHireStates(Dock.At("2026-01-01T08:00", "table"), [new("out", "scuffed")]));
        var looked = Struck("scuffed").With(Short("2026-02-01T11:00", "nothing_new"));
        Assert.Equal(HireWord.Out, HireStates.Of(looked.Finding(), strict).Word);
        Assert.Equal("An inspection dated after the strike with the verdict fit.", HireStates.Of(looked.Finding(), strict).Reasons.Single().ReleasedBy);
    }

    [Fact]
    public void A_fit_after_it_clears_it_and_a_strike_told_late_blocks_again()
    {
        var fit = Struck("bent").With(Dock.Look("2026-02-02T10:00"));
        Assert.Equal(HireWord.InHire, State(fit).Word);
        Assert.Equal(HireWord.Out, State(fit.With(Dock.Strike("2026-02-03T10:00", label: "late"))).Word);
    }

    [Fact]
    public void On_stainless_a_fit_clears_a_hard_strike_only_with_shaft_and_gear_oil_seen()
    {
        var struck = Stainless("chipped");
        Assert.Contains("shaft and gear oil seen", State(struck).Reasons.Single().ReleasedBy, StringComparison.Ordinal);
        Assert.Equal(HireWord.Out, State(struck.With(Fit("prop", "hub"))).Word);
        Assert.Equal(HireWord.Out, State(struck.With(Fit("shaft"))).Word);
        Assert.Equal(HireWord.InHire, State(struck.With(Fit("gear_oil", "shaft"))).Word);
        Assert.Equal(HireWord.Out, State(struck.With(Dock.Look("2026-02-02T10:00"))).Word); // what is not said was not seen
        Assert.Equal(HireWord.InHire, State(Stainless("scuffed").With(Fit("prop"))).Word);
        Assert.Equal(HireWord.InHire, State(Struck("chipped").With(Fit("prop"))).Word);
    }

    [Fact]
    public void Somebody_at_the_dock_lifts_a_block_but_clears_no_strike()
    {
        var lifted = Struck("bent").With(Back("2026-02-01T12:00"));
        Assert.Equal(HireWord.InHire, State(lifted).Word);
        Assert.Equal(new DateOnly(2026, 2, 1), lifted.Finding().Positions.Single().OpenStrikes.Single().LiftedOn);
        Assert.Contains("Put back in hire on 2026-02-01", Attentions.Of(lifted.Finding()).Single().Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("Only that", Attentions.Of(lifted.Finding()).Single().Sentence, StringComparison.Ordinal);
        Assert.Equal(HireWord.Out, State(lifted.With(Dock.Strike("2026-02-02T10:00", label: "next"))).Word);
        Assert.Equal(HireWord.Out, State(Struck("bent").With(Back("2026-02-01T09:00"))).Word);
    }

    [Fact]
    public void Nobody_at_the_dock_lifts_take_off() =>
        Assert.Equal(HireWord.Out, State(Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", "take_off"), Back("2026-02-01T12:00"))).Word);

    [Fact]
    public void A_boat_taken_out_stays_out_until_somebody_returns_it()
    {
        var held = Dock.OneBoat().With(new TakeOutOfHire(Dock.At("2026-02-01T10:00", "out"), "kea", "service"));
        var reason = State(held).Reasons.Single();
        Assert.Equal((HireWord.Out, "Taken out of hire on 2026-02-01 (service).", "The record that it is back in hire."), (reason.Word, reason.Sentence, reason.ReleasedBy));
        Assert.Contains(Attentions.Of(held.Finding()), a => a is { Kind: AttentionKind.OutOfHire, Blocks: true });
        Assert.Equal(HireWord.InHire, State(held.With(Back("2026-02-02T10:00"))).Word);
    }

    [Fact]
    public void A_boat_that_is_laid_up_or_gone_is_out()
    {
        var laidUp = Dock.OneBoat().With(new LayUp(Dock.At("2026-02-01T10:00", "up"), "kea"));
        Assert.Equal(HireWord.Out, State(laidUp).Word);
        Assert.Equal(HireWord.InHire, State(laidUp.With(Dock.Look("2026-02-27T10:00"), new RelaunchBoat(Dock.At("2026-03-01T10:00", "down"), "kea"))).Word);
        var gone = Struck("bent").With(new RetireBoat(Dock.At("2026-03-01T10:00", "gone"), "kea", "sold")).Finding();
        Assert.Equal("Left the fleet on 2026-03-01 (sold).", HireStates.Of(gone).Reasons.Single().Sentence);
        Assert.Empty(Attentions.Of(gone));
    }

    [Fact]
    public void The_strictest_reason_comes_first_and_names_the_state()
    {
        var state = State(Struck("scuffed").With(Dock.Look("2026-02-02T10:00", "take_off")));
        Assert.Equal([HireWord.Out, HireWord.LookFirst], state.Reasons.Select(r => r.Word));
        Assert.Equal("A short look that sees no damage, recorded.", state.Reasons[1].ReleasedBy);
    }

    internal static LookOver Short(string time, string seen) => new(Dock.At(time, "short " + time), "kea", "single", "at_dock", seen);

    private static Fleet Struck(string severity) => Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", severity));

    private static Fleet Stainless(string severity) => new Fleet().With(
        Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop() with { Material = "stainless" }, Dock.Mounted(), Dock.Strike("2026-02-01T10:00", severity));

    private static Inspect Fit(params string[] seen) => Dock.Look("2026-02-02T10:00") with { Seen = seen };

    private static ReturnToHire Back(string time) => new(Dock.At(time, "back " + time), "kea", "looked_at_dock");

    private static HireState State(Fleet fleet) => HireStates.Of(fleet.Finding());
}
