using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;
using FleetWake.Logbook.Season;
using FleetWake.Logbook.Tests.Policies;

namespace FleetWake.Logbook.Tests.Hire;

public class Boats_that_cannot_sail
{
    private static readonly Fleet s_engineOff = Dock.OneBoat().With(new RemoveEngine(Dock.At("2026-06-12T10:00", "off"), "kea", "single", "e1"));

    private static readonly Fleet s_relaunched = Dock.OneBoat().With(
        new LayUp(Dock.At("2026-02-01T10:00", "up"), "kea"), new RelaunchBoat(Dock.At("2026-03-01T10:00", "down"), "kea"));

    [Fact]
    public void A_boat_whose_prop_came_off_is_out_until_one_is_on()
    {
        var off = Dock.OneBoat().With(Dock.Removed("2026-06-12T10:00"));
        Assert.Equal((HireWord.Out, "No prop on since 2026-06-12.", "A prop fitted and recorded."), Reason(off));
        Assert.Contains(Attentions.Of(off.Finding()), a => a is { Kind: AttentionKind.CannotSail, Blocks: true });
        Assert.Empty(State(off.With(Dock.Mounted("2026-06-13T10:00"))).Reasons);
    }

    [Fact]
    public void A_boat_whose_engine_came_off_is_out_until_one_hangs_with_a_prop()
    {
        Assert.Equal((HireWord.Out, "No engine on since 2026-06-12.", "An engine hung, with its prop fitted, and both recorded."), Reason(s_engineOff));
        var hung = s_engineOff.With(Dock.Fitted("2026-06-13T10:00"));
        Assert.Equal("No prop on since 2026-06-12.", Reason(hung).Sentence);
        Assert.Empty(State(hung.With(Dock.Mounted("2026-06-13T11:00"))).Reasons);
    }

    [Fact]
    public void A_boat_of_which_nobody_recorded_a_prop_is_looked_at_first()
    {
        Assert.Equal(HireWord.LookFirst, Reason(new Fleet().With(Dock.Boat())).Word);
        Assert.Equal("Nobody recorded which prop is on.", Reason(new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted())).Sentence);
    }

    [Fact]
    public void A_boat_that_is_not_registered_is_looked_at_first()
    {
        var held = new Fleet().With(Dock.Engine(), Dock.Fitted(), Dock.Prop(), Dock.Mounted());
        Assert.Equal((HireWord.LookFirst, "Its registration."), (Reason(held).Word, Reason(held).ReleasedBy));
        Assert.Equal("Its registration.", Attentions.Of(held.Finding()).Single(a => a.Blocks).ReleasedBy);
        Assert.Empty(State(held.With(Dock.Boat())).Reasons);
    }

    [Fact]
    public void A_boat_relaunched_without_its_look_is_looked_at_first_unless_that_rule_is_off()
    {
        Assert.Equal((HireWord.LookFirst, "A look at prop and shaft, recorded as an inspection."), (Reason(s_relaunched).Word, Reason(s_relaunched).ReleasedBy));
        Assert.Empty(State(s_relaunched.With(Dock.Look("2026-03-02T10:00"))).Reasons);
        var off = Setting_a_policy.Policy(new SetInspectionRule(Dock.At("2026-01-01T08:00", "off"), "before-relaunch", "none", "relaunch", "inspection", Off: true));
        Assert.Empty(HireStates.Of(s_relaunched.Finding(), off).Reasons);
    }

    [Fact]
    public void A_position_that_only_a_mistyped_record_names_keeps_no_boat()
    {
        var typo = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", position: "port")).Finding();
        Assert.True(typo.Positions.Single(p => p.Position == Position.Port).NotOnBoat);
        Assert.All(HireStates.Of(typo).Reasons, r => Assert.StartsWith("Strike", r.Sentence, StringComparison.Ordinal));
        var moved = new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted(position: "port"), Dock.Fitted("2026-01-05T08:30"), Dock.Prop(), Dock.Mounted());
        Assert.Empty(State(moved).Reasons);
    }

    [Fact]
    public void A_boat_that_is_laid_up_is_out_for_that_alone()
    {
        var laidUp = Dock.OneBoat().With(new LayUp(Dock.At("2026-02-01T10:00", "up"), "kea"), Dock.Removed("2026-02-02T10:00"));
        Assert.Single(State(laidUp).Reasons);
        Assert.Empty(Attentions.Of(laidUp.Finding()));
    }

    private static HireState State(Fleet fleet) => HireStates.Of(fleet.Finding());

    private static (HireWord Word, string Sentence, string ReleasedBy) Reason(Fleet fleet)
    {
        var reason = State(fleet).Reasons.Single();
        return (reason.Word, reason.Sentence, reason.ReleasedBy);
    }
}
