using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Findings;

public class Trials_that_count
{
    [Fact]
    public void A_plain_trial_counts() => Assert.Null(Only(Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5500, 120))).SetAside);

    [Fact]
    public void Part_throttle_is_set_aside_and_says_nothing_of_the_band()
    {
        var part = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 3500, 120, throttle: "part"));
        Assert.Equal(SetAsideReason.PartThrottle, Only(part).SetAside);
        Assert.NotNull(Only(part).SlipPercent);
        Assert.Equal(BandState.NotKnown, part.Finding().Positions.Single().Mounting!.Band.State);
    }

    [Fact]
    public void A_reading_that_the_limiter_held_is_set_aside() =>
        Assert.Equal(SetAsideReason.LimiterReached, Only(Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 6200, 120, limiter: true))).SetAside);

    [Fact]
    public void A_trial_before_any_reading_of_hours_is_set_aside_until_one_is_told_late()
    {
        var unread = new Fleet().With(Dock.Boat(), Dock.Engine(), Dock.Fitted(hours: null), Dock.Prop(), Dock.Mounted(), Dock.Trial("2026-02-01T10:00", 5500));
        Assert.Equal(SetAsideReason.HoursUnknown, Only(unread).SetAside);
        Assert.Equal(BandState.InBand, unread.Finding().Positions.Single().Mounting!.Band.State);

        var told = Only(unread.With(Dock.Hours("2026-01-22T10:00", 100), Dock.Hours("2026-02-11T10:00", 120)));
        Assert.Null(told.SetAside);
        Assert.Equal(110, told.Hours!.Value, 1e-9);
        Assert.True(told.HoursBridged);
    }

    [Fact]
    public void A_late_trial_takes_its_place_by_when_it_happened()
    {
        var fleet = Dock.OneBoat().With(Dock.Trial("2026-03-01T10:00", 5550, 150), Dock.Trial("2026-02-01T10:00", 5500, 120));
        Assert.Equal([5500, 5550], fleet.Finding().Positions.Single().Mounting!.Trials.Select(t => t.Rpm));
    }

    [Fact]
    public void A_trial_before_the_mounting_or_after_it_is_not_of_the_mounting()
    {
        var fleet = Dock.OneBoat().With(
            Dock.Trial("2026-01-05T08:30", 5500, 100), Dock.Trial("2026-02-01T10:00", 5510, 120), Dock.Removed("2026-02-02T10:00"),
            Dock.Mounted("2026-02-03T10:00"), Dock.Trial("2026-02-04T10:00", 5520, 125));
        Assert.Equal(5520, Only(fleet).Rpm);
        Assert.Equal(5520, fleet.Finding().Positions.Single().Mounting!.BaselineRpm);
    }

    [Fact]
    public void Twins_have_one_speed_and_an_RPM_each_and_hours_each()
    {
        var fleet = new Fleet().With(
            Dock.Boat(positions: ["port", "starboard"]), Dock.Engine(), Dock.Engine(engine: "e2"), Dock.Prop(), Dock.Prop(prop: "p2", pitch: 14),
            Dock.Fitted(position: "port"), Dock.Fitted(engine: "e2", position: "starboard", hours: 300),
            Dock.Mounted(position: "port"), Dock.Mounted(prop: "p2", position: "starboard"),
            Dock.Trial("2026-02-01T10:00", 5500) with
            {
                Runs = [Dock.Run(24, 0, ("port", 5500, false), ("starboard", 5600, true)), Dock.Run(22, 180, ("port", 5520, false), ("starboard", 5600, false))],
                Meters = [new("starboard", 320), new("port", 120)],
            });
        var (port, starboard) = (fleet.Finding().Positions[0].Mounting!, fleet.Finding().Positions[1].Mounting!);
        Assert.Equal((5510, 120, null, 23), (port.Trials[0].Rpm, port.Trials[0].Hours, port.Trials[0].SetAside, Math.Round(port.Trials[0].SpeedKnots!.Value, 9)));
        Assert.Equal((5600, 320, SetAsideReason.LimiterReached, 23), (starboard.Trials[0].Rpm, starboard.Trials[0].Hours, starboard.Trials[0].SetAside, Math.Round(starboard.Trials[0].SpeedKnots!.Value, 9)));
        Assert.Equal(100 * (1 - (23 / (28.286987 * 5510 / 5500))), port.Trials[0].SlipPercent!.Value, 1e-4);
        Assert.Equal(100 * (1 - (23 / (28.286987 * 14 / 13 * 5600 / 5500))), starboard.Trials[0].SlipPercent!.Value, 1e-4);
        Assert.Equal(BandState.InBand, port.Band.State);
        Assert.Equal(BandState.AboveTop, starboard.Band.State);
    }

    [Fact]
    public void A_twin_whose_gauge_nobody_read_has_no_trial_there()
    {
        var fleet = new Fleet().With(
            Dock.Boat(positions: ["port", "starboard"]), Dock.Mounted(position: "port"), Dock.Mounted(prop: "p2", position: "starboard"),
            Dock.Trial("2026-02-01T10:00", 5500, position: "port"));
        Assert.Single(fleet.Finding().Positions[0].Mounting!.Trials);
        Assert.Empty(fleet.Finding().Positions[1].Mounting!.Trials);
    }

    private static TrialFinding Only(Fleet fleet) => fleet.Finding().Positions.Single().Mounting!.Trials.Single();
}
