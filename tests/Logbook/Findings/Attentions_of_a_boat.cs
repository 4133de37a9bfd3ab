using System.Globalization;
using CsCheck;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Inspections;

namespace FleetWake.Logbook.Tests.Findings;

public class Attentions_of_a_boat
{
    [Fact]
    public void A_sound_boat_needs_nobody() => Assert.Empty(Attentions.Of(Trialled.Boat((100, 5500), (150, 5500), (200, 5510)).Finding()));

    [Fact]
    public void The_most_urgent_comes_first()
    {
        var fleet = Trialled.Boat((100, 6100)).With(
            Dock.Strike("2026-04-01T10:00"), Dock.Look("2026-04-02T10:00", "take_off"), Dock.Look("2026-04-03T10:00", "repair", marks: "hub_slip"),
            Dock.Trial("2026-01-05T08:30", 5500), Dock.Removed("2026-01-05T08:20"));
        Assert.Equal(
            [AttentionKind.TakeOff, AttentionKind.OpenStrike, AttentionKind.HubSlip, AttentionKind.OutsideBand, AttentionKind.Contradiction, AttentionKind.Contradiction],
            Attentions.Of(fleet.Finding()).Select(a => a.Kind));
    }

    [Fact]
    public void A_boat_that_leaves_its_band_soon_is_brought_up_and_one_that_leaves_it_late_is_not()
    {
        var soon = Attentions.Of(Trialled.Boat((100, 5700), (150, 5750), (200, 5800), (250, 5850), (300, 5910), (350, 5990)).Finding());
        Assert.Equal([AttentionKind.LeavingBand, AttentionKind.Drifting], soon.Select(a => a.Kind));
        Assert.Matches(@"^\d+ % likely to leave its band at the top within 100 engine hours from now: about \d+ engine hours after its last trial \(\d+ to \d+ at 80 %\), by its use about 2026-\d\d-\d\d, with 90 % chance not before 2026-\d\d-\d\d\.", soon[0].Sentence);
        Assert.Matches(@"^Drift alarm since the trial of 2026-\d\d-\d\d: .+ boat-year\.$", soon[1].Sentence);
        Assert.Empty(Attentions.Of(Trialled.Boat((100, 5500), (150, 5550), (200, 5600), (250, 5650)).Finding()));
    }

    [Fact]
    public void Over_the_top_says_by_how_much()
    {
        Assert.StartsWith("Over-revving: 6100 RPM at wide-open throttle, 100 above the top (6000) of its band. May be: ", Sentence(Trialled.Boat((100, 6100))), StringComparison.Ordinal);
        Assert.StartsWith("Lugging: 4900 RPM at wide-open throttle, 100 below the bottom (5000) of its band. May be: ", Sentence(Trialled.Boat((100, 4900))), StringComparison.Ordinal);
        Assert.StartsWith("Over-revving: 6000 RPM at wide-open throttle, just above the top (6000) of its band.", Sentence(Trialled.Boat((100, 6000.3))), StringComparison.Ordinal);
    }

    [Fact]
    public void Both_the_line_and_the_last_reading_are_shown_where_they_differ()
    {
        var boat = Trialled.Boat((100, 5900), (200, 5960), (300, 6020), (350, 6040), (400, 6060), (410, 5990));
        var sentence = Sentence(boat);
        Assert.Contains($"{boat.Mounting().LevelRpm!.Value:0} RPM", sentence, StringComparison.Ordinal);
        Assert.Contains("The last of them read 5990.", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reading_that_the_limiter_held_is_never_called_a_value_above_the_top()
    {
        var sentence = Sentence(Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5900, 120, limiter: true)));
        Assert.StartsWith("Over-revving: the limiter held it at 5900 RPM", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("0 above", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stainless_prop_asks_for_a_look_at_the_lower_unit()
    {
        var stainless = new Fleet().With(Dock.Boat(), Dock.Prop() with { Material = "stainless" }, Dock.Mounted(), Dock.Strike("2026-02-01T10:00"));
        Assert.Contains("lower unit", Sentence(stainless), StringComparison.Ordinal);
        Assert.DoesNotContain("lower unit", Sentence(Dock.OneBoat().With(Dock.Strike("2026-02-01T10:00"))), StringComparison.Ordinal);
    }

    [Fact]
    public void Records_of_an_unknown_boat_are_counted_and_none_is_no_matter()
    {
        var held = new Fleet().With(Dock.Mounted());
        Assert.StartsWith("1 record held", Attentions.Of(held.Finding()).Single().Sentence, StringComparison.Ordinal);
        Assert.Empty(Attentions.Of(held.With(new Retract(Dock.At("2026-02-01T10:00", "back"), Dock.Id("mount p1 kea 2026-01-05T09:00"), "did_not_happen", "kea")).Finding()));
    }

    [Fact]
    public void Whatever_the_records_nothing_is_said_that_the_finding_does_not_say() => Gen.OneOf(Anything.Records, Anything.Trials).Sample(
        t =>
        {
            var fleet = Dock.OneBoat().With(t.Records.SelectMany(Anything.Kept));
            var finding = fleet.Finding();
            var said = Attentions.Of(finding);
            Assert.Equal(said.Select(a => a.Kind).Order(), said.Select(a => a.Kind));
            Assert.Equal(finding.Contradictions.Select(c => c.Question), said.Where(a => a.Kind == AttentionKind.Contradiction).Select(a => a.Sentence));
            foreach (var position in finding.Positions) Agrees(position, [.. said.Where(a => a.Position == position.Position)]);
        },
        iter: 2000);

    private static void Agrees(PositionFinding position, List<Attention> said)
    {
        var band = position.Mounting?.Band.State;
        Assert.Equal(band is BandState.AboveTop, said.Any(a => a.Sentence.StartsWith("Over-revving", StringComparison.Ordinal)));
        Assert.Equal(band is BandState.BelowBottom, said.Any(a => a.Sentence.StartsWith("Lugging", StringComparison.Ordinal)));
        Assert.Equal(position.OpenStrikes.Count + position.Carried.Count, said.Count(a => a.Kind == AttentionKind.OpenStrike));
        Assert.Equal(position.Uncleared.Any(i => i.Verdict == Verdict.TakeOff), said.Any(a => a.Kind == AttentionKind.TakeOff));
        var grave = position.Uncleared.Any(i => i.Verdict is Verdict.TakeOff or Verdict.Repair || i.Marks.Any(m => m is InspectionMark.HubSlip or InspectionMark.Crack));
        Assert.Equal(position.OpenStrikes.Count > 0 || position.Carried.Count > 0 || grave, said.Any(a => a.Blocks && a.Kind != AttentionKind.CannotSail));
        Assert.All(said.Where(a => a.ReleasedBy is not null), a => Assert.True(a.Blocks));
        Assert.All(said.Where(a => a.Kind == AttentionKind.LeavingBand), a =>
        {
            Assert.Equal(BandState.InBand, band);
            Assert.InRange(position.Mounting!.Exit.Within100HoursChance!.Value, NextTrialCard.ActAtChance, 1);
            Assert.False(position.Mounting.FleetOnly);
        });
        var looked = position.LastInspection is { Verdict: Verdict.Fit or Verdict.Watch } look && look.On >= position.Mounting?.Watch?.RaisedOn;
        Assert.Equal(band is BandState.InBand && position.Mounting!.Watch?.RaisedAt is not null && !looked, said.Any(a => a.Kind == AttentionKind.Drifting));
    }

    private static string Sentence(Fleet fleet) => Attentions.Of(fleet.Finding()).Single(a => a.Kind != AttentionKind.Contradiction).Sentence;
}
