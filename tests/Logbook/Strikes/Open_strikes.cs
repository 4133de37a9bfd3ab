using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Tests.Strikes;

public class Open_strikes
{
    private static readonly Fleet s_struck = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00"));

    [Fact]
    public void A_strike_is_open_until_somebody_looks()
    {
        var open = Assert.Single(Open(s_struck));
        Assert.Equal(new OpenStrike(Dock.Id("strike"), new DateOnly(2026, 2, 1), StruckObject.Rock, StrikeSeverity.Bent) { Material = PropMaterial.Aluminium }, open);
    }

    [Fact]
    public void An_amended_strike_is_known_by_the_entry_that_it_was_first_told_by()
    {
        var amended = Dock.Strike("2026-02-01T10:00", "chipped") with { Entry = Dock.At("2026-02-01T10:00", "strike, mended", amends: "strike") };
        var open = Assert.Single(Open(s_struck.With(amended)));
        Assert.Equal((Dock.Id("strike, mended"), Dock.Id("strike")), (open.Entry, open.Original));
        var look = Dock.Look("2026-02-02T10:00", "take_off");
        var again = look with { Entry = Dock.At("2026-02-02T10:00", "look, mended", amends: "look 2026-02-02T10:00") };
        Assert.Equal(Dock.Id("look 2026-02-02T10:00"), s_struck.With(look, again).Finding().Positions[0].Uncleared.Single().Original);
    }

    [Theory]
    [InlineData("fit", true)]
    [InlineData("watch", false)]
    [InlineData("repair", false)]
    [InlineData("take_off", false)]
    public void Only_a_fit_clears_it(string verdict, bool clears) =>
        Assert.Equal(clears, Open(s_struck.With(Dock.Look("2026-02-02T10:00", verdict))).Count == 0);

    [Fact]
    public void A_fit_from_before_clears_nothing() => Assert.Single(Open(s_struck.With(Dock.Look("2026-01-31T10:00"))));

    [Fact]
    public void A_fit_of_another_position_clears_nothing() =>
        Assert.Single(Open(s_struck.With(Dock.Look("2026-02-02T10:00", position: "port"))));

    [Fact]
    public void A_strike_told_late_is_open_again_if_it_happened_after_the_fit()
    {
        var cleared = s_struck.With(Dock.Look("2026-02-02T10:00"));
        Assert.Empty(Open(cleared));
        Assert.Single(Open(cleared.With(Dock.Strike("2026-02-03T10:00", label: "told late"))));
        Assert.Empty(Open(cleared.With(Dock.Strike("2026-01-20T10:00", label: "told later still"))));
    }

    [Fact]
    public void Taking_the_fit_back_opens_it_again() =>
        Assert.Single(Open(s_struck.With(
            Dock.Look("2026-02-02T10:00"), new Retract(Dock.At("2026-02-03T10:00", "back"), Dock.Id("look 2026-02-02T10:00"), "did_not_happen", "kea"))));

    [Fact]
    public void A_touch_without_a_mark_blocks_nobody() =>
        Assert.Empty(Open(Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", "no_mark"))));

    [Fact]
    public void A_new_prop_does_not_clear_it() =>
        Assert.Single(Open(s_struck.With(Dock.Removed("2026-02-02T10:00"), Dock.Mounted("2026-02-02T11:00", "p2"))));

    [Fact]
    public void A_strike_at_a_position_that_the_boat_does_not_have_still_blocks()
    {
        var finding = Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00", position: "port")).Finding();
        Assert.Contains(Attentions.Of(finding), a => a is { Kind: AttentionKind.OpenStrike, Blocks: true, Position: Position.Port });
    }

    private static IReadOnlyList<OpenStrike> Open(Fleet fleet) => fleet.Finding().Positions.Single(p => p.Position == Position.Single).OpenStrikes;
}
