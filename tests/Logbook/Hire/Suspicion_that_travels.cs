using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Policies;

namespace FleetWake.Logbook.Tests.Hire;

public class Suspicion_that_travels
{
    private static readonly Fleet s_two = new Fleet().With(
        Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop(), Dock.Mounted(),
        Dock.Boat(boat: "tui"), Dock.Engine(engine: "e2"), Dock.Fitted(engine: "e2", boat: "tui"), Dock.Prop(prop: "p2"));

    [Fact]
    public void A_struck_prop_blocks_the_boat_it_goes_to_as_well()
    {
        var moved = Moved("chipped");
        Assert.Equal(HireWord.Out, HireStates.Of(moved.Finding()).Word);
        var reason = HireStates.Of(moved.Finding("tui")).Reasons.Single();
        Assert.Equal(
            (HireWord.Out, "Prop p1 was struck (chipped) on kea on 2026-02-01, and no inspection since says fit.", "An inspection of the prop on this boat with the verdict fit."),
            (reason.Word, reason.Sentence, reason.ReleasedBy));
        Assert.Contains(Attentions.Of(moved.Finding("tui")), a => a is { Kind: AttentionKind.OpenStrike, Blocks: true });
        Assert.Contains(Outlook.Of(moved.Finding("tui"), default), d => d.Why == "p1 was struck on kea on 2026-02-01 (chipped)");
    }

    [Fact]
    public void A_fit_where_it_went_clears_it_there_and_not_where_it_came_from()
    {
        var looked = Moved("chipped").With(Dock.Look("2026-02-04T10:00") with { Boat = "tui" });
        Assert.Equal(HireWord.InHire, HireStates.Of(looked.Finding("tui")).Word);
        Assert.Equal(HireWord.Out, HireStates.Of(looked.Finding()).Word);
    }

    [Fact]
    public void A_fit_before_it_went_clears_both()
    {
        var looked = Moved("chipped").With(Dock.Look("2026-02-02T08:00"));
        Assert.StartsWith("No prop on since", HireStates.Of(looked.Finding()).Reasons.Single().Sentence, StringComparison.Ordinal);
        Assert.Empty(looked.Finding("tui").Positions.Single().Carried);
    }

    [Theory]
    [InlineData("chipped", "aluminium", false)]
    [InlineData("chipped", "stainless", true)]
    [InlineData("scuffed", "stainless", false)]
    [InlineData("bent", "aluminium", true)]
    public void A_lower_unit_goes_with_its_engine(string severity, string material, bool suspected)
    {
        var moved = new Fleet().With(
            Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Prop() with { Material = material }, Dock.Mounted(), Dock.Boat(boat: "tui"),
            Dock.Strike("2026-02-01T10:00", severity), Dock.Fitted("2026-02-02T10:00", boat: "tui", hours: 150));
        var carried = moved.Finding("tui").Positions.Single().Carried;

        // The other boat's prop is not in this boat's papers: what nobody knows the material of may be stainless.
        Assert.Equal(suspected || severity == "chipped", carried.Any(c => c is { Part: SuspectPart.LowerUnit, Thing: "e1", From: "kea" }));
        Assert.NotEqual(HireWord.InHire, HireStates.Of(moved.Finding()).Word);
    }

    [Fact]
    public void A_verdict_on_a_prop_goes_with_it_too()
    {
        var moved = s_two.With(Dock.Look("2026-02-01T10:00", "take_off"), Dock.Removed("2026-02-02T10:00"), Dock.Mounted("2026-02-03T10:00", boat: "tui"));
        Assert.Equal("Prop p1 was inspected (take off) on kea on 2026-02-01, and no inspection since says fit.", HireStates.Of(moved.Finding("tui")).Reasons.Single().Sentence);
    }

    [Fact]
    public void From_port_to_starboard_it_goes_along()
    {
        var twin = new Fleet().With(
            Dock.Boat(positions: ["port", "starboard"]), Dock.Prop(), Dock.Mounted(position: "port"), Dock.Strike("2026-02-01T10:00", "bent", "port"),
            Dock.Removed("2026-02-02T10:00", position: "port"), Dock.Mounted("2026-02-03T10:00", position: "starboard"));
        Assert.Single(twin.Finding().Positions[1].Carried);
        Assert.Empty(twin.Finding().Positions[0].Carried);
    }

    [Fact]
    public void Somebody_lifts_it_once_it_is_there_and_not_before()
    {
        ReturnToHire Back(string time) => new(Dock.At(time, "back " + time), "tui", "looked_at_dock");
        Assert.Equal(HireWord.Out, HireStates.Of(Moved("chipped").With(Back("2026-02-02T11:00")).Finding("tui")).Word);
        Assert.Equal(HireWord.InHire, HireStates.Of(Moved("chipped").With(Back("2026-02-03T11:00")).Finding("tui")).Word);
    }

    private static Fleet Moved(string severity) =>
        s_two.With(Dock.Strike("2026-02-01T10:00", severity), Dock.Removed("2026-02-02T10:00"), Dock.Mounted("2026-02-03T10:00", boat: "tui"));
}
