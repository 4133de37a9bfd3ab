using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion.Causes;

namespace FleetWake.Logbook.Tests.Findings;

/// <summary>
/// RPM and speed of a boat against its first trial. The changes are those of the 7 m boat of 150 hp in
/// tests/Propulsion/Reference/wot_signatures.csv, whose provenance stands there.
/// </summary>
public class What_trials_point_to
{
    [Fact]
    public void Lost_pitch_turns_the_engine_faster_and_is_told_as_that_group() // pitch -6 %: RPM +4.2 %, speed -0.6 %
    {
        var points = PointsTo(Dock.OneBoat().With(Trial("2026-02-01T10:00", 5500, 22.5), Trial("2026-03-01T10:00", 5731, 22.37), Trial("2026-04-01T10:00", 5731, 22.37)));
        Assert.Equal(CauseGroup.RpmUp, points!.Group);
        Assert.True(points.GroupProbability > 0.8);
        Assert.Contains(Cause.PitchOrCupLoss, points.Tied);
        Assert.NotEmpty(points.Tests);
        Assert.Equal(2, points.Trials);
    }

    [Fact]
    public void A_fouled_hull_turns_the_engine_slower() // resistance +20 %: RPM -3.7 %, speed -7.6 %
    {
        var points = PointsTo(Dock.OneBoat().With(Trial("2026-02-01T10:00", 5500, 22.5), Trial("2026-03-01T10:00", 5297, 20.8), Trial("2026-04-01T10:00", 5297, 20.8)));
        Assert.Equal(CauseGroup.RpmDown, points!.Group);
        Assert.Contains(Cause.HullOrLoad, points.Tied);
        Assert.DoesNotContain(Cause.PitchOrCupLoss, points.Tied);
    }

    [Fact]
    public void A_reading_outside_the_band_is_told_with_what_its_trials_point_to()
    {
        var fleet = Dock.OneBoat().With(Trial("2026-02-01T10:00", 5800, 23.7), Trial("2026-03-01T10:00", 6044, 23.56), Trial("2026-04-01T10:00", 6044, 23.56));
        var told = Attentions.Of(fleet.Finding(), null).Single(a => a.Kind == AttentionKind.OutsideBand).Sentence;
        Assert.Contains("It turns faster than at its baseline; RPM and speed cannot tell apart a worn prop or lost cup", told, StringComparison.Ordinal);
        Assert.Contains("Next: ", told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_new_baseline_forgets_what_was_before()
    {
        var fleet = Dock.OneBoat().With(
            Trial("2026-02-01T10:00", 5500, 22.5),
            Trial("2026-03-01T10:00", 5731, 22.37),
            Dock.Strike("2026-03-10T10:00"),
            Trial("2026-04-01T10:00", 5731, 22.37));
        Assert.Null(PointsTo(fleet)); // one trial since
    }

    [Fact]
    public void Without_gear_ratio_or_size_of_the_prop_nothing_is_pointed_to()
    {
        RunTrial[] trials = [Trial("2026-02-01T10:00", 5500, 22.5), Trial("2026-03-01T10:00", 5731, 22.37)];
        Assert.Null(PointsTo(new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted(), Dock.Mounted()).With([.. trials]))); // no prop registered
        Assert.Null(PointsTo(new Fleet().With(Dock.Boat(), Dock.Fitted(), Dock.Prop(), Dock.Mounted()).With([.. trials])));   // no engine registered
    }

    [Fact]
    public void A_trial_held_by_the_limiter_is_compared_with_nothing() =>
        Assert.Null(PointsTo(Dock.OneBoat().With(Trial("2026-02-01T10:00", 5500, 22.5), Dock.Trial("2026-03-01T10:00", 6100, 140, limiter: true))));

    private static RunTrial Trial(string time, double rpm, double knots) => Dock.Trial(time, rpm, knots: knots) with
    {
        AirTemperatureCelsius = 25,
        PressureHectopascals = 1000,
        HumidityPercent = 30,
        People = 2,
    };

    private static PointsTo? PointsTo(Fleet fleet) => fleet.Finding().Positions.Single().Mounting!.PointsTo;
}
