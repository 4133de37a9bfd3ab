using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Trials;

public class Readings_normalised_elsewhere
{
    private static readonly ReadNormalisedRpm Good = new(Dock.At("2026-02-01T10:00", "normalised"), "kea", "single", 5512.5, 140, 18.5, -60);

    [Fact]
    public void It_is_kept_as_it_was_written_down() => Spec.Given().When(Good)
        .Then(("boat/kea", new NormalisedRpmRead(Dock.Kept(Good.Entry!), "kea", Position.Single, 5512.5, 140, 18.5, -60)))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void What_cannot_be_is_refused() => Spec.EachIsRefused(
        (Good with { Boat = null }, "/boat", "missing"),
        (Good with { Position = "left" }, "/position", "unknown_word"),
        (Good with { Rpm = null }, "/rpm", "missing"),
        (Good with { Rpm = 55 }, "/rpm", "out_of_range"),
        (Good with { Hours = -1 }, "/hours", "out_of_range"),
        (Good with { AirTemperatureCelsius = 64 }, "/airTemperatureCelsius", "out_of_range"),
        (Good with { LoadDeltaKilograms = -2001 }, "/loadDeltaKilograms", "out_of_range"));

    [Fact]
    public void It_counts_like_a_trial_and_is_marked_and_has_no_speed_and_no_slip()
    {
        var found = Dock.OneBoat().With(Good).Mounting().Trials.Single();
        Assert.Equal((5512.5, 140, false, null), (found.Rpm, found.Hours, found.HoursBridged, found.SetAside));
        Assert.True(found.Normalised);
        Assert.Null(found.SpeedKnots);
        Assert.Null(found.SlipPercent);
        Assert.Empty(found.Flags);
    }

    [Fact]
    public void Drift_is_the_same_from_such_readings_as_from_trials()
    {
        var trials = Trialled.Boat((100, 5500), (150, 5550), (200, 5620));
        var brought = Dock.OneBoat().With(Read(0, 100, 5500), Read(1, 150, 5550), Read(2, 200, 5620));
        Assert.Equal(trials.Mounting().Drift, brought.Mounting().Drift);
        Assert.Equal(trials.Mounting().Band, brought.Mounting().Band);
    }

    [Fact]
    public void One_line_never_holds_both_kinds_and_the_more_numerous_counts()
    {
        var trials = Trialled.Boat((100, 5500), (150, 5550), (200, 5620));
        var one = trials.With(Read(2.5, 220, 5400)).Mounting();
        Assert.Equal([null, null, null, SetAsideReason.OtherConditions], one.Trials.Select(t => t.SetAside));
        Assert.Equal(trials.Mounting().Drift, one.Drift);

        // 150 RPM of weather between the helm's figures and those at reference are no drift.
        var more = Trialled.Boat((100, 5650)).With(Read(1, 150, 5500), Read(2, 200, 5500), Read(3, 250, 5500)).Mounting();
        Assert.Equal([SetAsideReason.OtherConditions, null, null, null], more.Trials.Select(t => t.SetAside));
        Assert.Equal(Dock.OneBoat().With(Read(1, 150, 5500), Read(2, 200, 5500), Read(3, 250, 5500)).Mounting().Drift, more.Drift);
        Assert.Equal(5500, more.BaselineRpm);

        var even = Trialled.Boat((100, 5500)).With(Read(1, 150, 5550)).Mounting();
        Assert.Equal([null, SetAsideReason.OtherConditions], even.Trials.Select(t => t.SetAside));
    }

    [Fact]
    public void One_in_band_does_not_clear_what_the_helm_read_over_it_and_both_are_kept()
    {
        var over = Trialled.Boat((100, 6150)).With(Read(0.1, 101, 5950));
        Assert.Equal(new BandStanding(BandState.AboveTop, 6150, 6150, -150, BandEdge.Top) { ReferenceRpm = 5950 }, over.Mounting().Band);
        Assert.Equal(BandState.AboveTop, over.With(Read(3, 160, 5940)).Mounting().Band.State);
        Assert.Equal(BandState.InBand, over.With(Dock.Trial(Trialled.Day(1), 5900, 150), Read(2, 160, 5800)).Mounting().Band.State);
        Assert.Equal(BandState.InBand, over.With(Dock.Strike(Trialled.Day(1)), Read(2, 160, 5800)).Mounting().Band.State); // another stretch

        var held = Dock.OneBoat().With(Dock.Trial(Trialled.Day(0), 5990, 100, limiter: true), Read(0.1, 101, 5800));
        Assert.Equal((BandState.AboveTop, 5990), (held.Mounting().Band.State, held.Mounting().Band.ObservedRpm));
        Assert.Contains("limiter held it", Assert.Single(Attentions.Of(held.Finding()), a => a.Kind == AttentionKind.OutsideBand).Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void One_over_the_top_counts_though_the_helm_read_less() =>
        Assert.Equal(BandState.AboveTop, Trialled.Boat((100, 5900)).With(Read(1, 150, 6050)).Mounting().Band.State);

    [Fact]
    public void One_before_any_reading_of_hours_is_set_aside()
    {
        var unread = new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted(hours: null), Dock.Prop(), Dock.Mounted(), Good with { Hours = null });
        Assert.Equal(SetAsideReason.HoursUnknown, unread.Mounting().Trials.Single().SetAside);
    }

    [Fact]
    public void One_that_cannot_be_believed_is_asked_about_and_set_aside()
    {
        var odd = Dock.OneBoat().With(Good with { Rpm = 1550 });
        Assert.Equal(ContradictionKind.RpmOutOfLine, Assert.Single(odd.History().Contradictions).Kind);
        Assert.Equal(SetAsideReason.NotCredible, odd.Mounting().Trials.Single().SetAside);
    }

    [Fact]
    public void One_of_a_boat_with_no_prop_or_of_another_position_is_asked_about()
    {
        Spec.Given(Dock.Boat()).When(Good).ThenAsks("kea", ContradictionKind.TrialWithoutProp);
        Spec.Given(Dock.Boat(), Dock.Mounted()).When(Good with { Position = "port" })
            .ThenAsks("kea", ContradictionKind.TrialWithoutProp, ContradictionKind.NoSuchPosition);
    }

    [Fact]
    public void One_of_the_other_twin_is_not_of_this_mounting()
    {
        var twins = new Fleet().With(
            Dock.Boat(positions: ["port", "starboard"]), Dock.Mounted(position: "port"), Dock.Mounted(prop: "p2", position: "starboard"), Good with { Position = "port" });
        Assert.Equal([1, 0], twins.Finding().Positions.Select(p => p.Mounting!.Trials.Count));
    }

    private static ReadNormalisedRpm Read(double trial, double hours, double rpm) =>
        new(Dock.At(Trialled.Day(trial), $"normalised {trial}"), "kea", "single", rpm, hours);
}
