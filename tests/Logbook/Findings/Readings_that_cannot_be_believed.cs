using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Findings;

public class Readings_that_cannot_be_believed
{
    [Theory]
    [InlineData(9000)] // band 5000 to 6000
    [InlineData(550)] // read in tens
    public void A_reading_far_from_the_band_is_kept_asked_about_and_set_aside(double rpm)
    {
        var fleet = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5500, 120), Dock.Trial("2026-03-01T10:00", rpm, 140));
        var asked = Assert.Single(fleet.History().Contradictions);
        Assert.Equal(ContradictionKind.RpmOutOfLine, asked.Kind);
        Assert.EndsWith("set aside.", asked.Question);
        var mounting = fleet.Finding().Positions[0].Mounting!;
        Assert.Equal([null, SetAsideReason.NotCredible], mounting.Trials.Select(t => t.SetAside));
        Assert.Equal((BandState.InBand, 5500), (mounting.Band.State, mounting.Band.ObservedRpm));
    }

    [Fact]
    public void An_engine_well_over_its_band_is_believed() =>
        Assert.Empty(Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 7000, 120)).History().Contradictions);

    [Theory]
    [InlineData("repair", true)]
    [InlineData("repair", true, "crack")]
    [InlineData("fit", true, "crack")]
    [InlineData("watch", false, "water_in_oil")]
    public void What_asks_for_a_repair_is_brought_up_until_a_clean_fit(string verdict, bool blocks, params string[] marks)
    {
        var seen = Dock.OneBoat().With(Dock.Look("2026-02-01T10:00", verdict, marks: marks));
        var attention = Assert.Single(Attentions.Of(seen.Finding()), a => a.Kind == AttentionKind.Repair);
        Assert.Equal(blocks, attention.Blocks);
        Assert.Empty(Attentions.Of(seen.With(Dock.Look("2026-02-08T10:00")).Finding()));
    }

    [Fact]
    public void A_fit_that_saw_a_crack_clears_no_strike() =>
        Assert.Single(Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00"), Dock.Look("2026-02-02T10:00", marks: "crack")).Finding().Positions[0].OpenStrikes);
}
