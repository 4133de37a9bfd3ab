using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Engines;

public class Meters_that_are_replaced
{
    private static readonly ReplaceMeter s_new = new(Dock.At("2026-03-01T10:00", "new meter"), "e1", 0, 160);

    private static readonly Fleet s_run = Dock.OneBoat().With(Dock.Hours("2026-02-01T10:00", 150), s_new, Dock.Hours("2026-04-01T10:00", 25));

    [Fact]
    public void The_engines_hours_go_on_over_the_new_meter()
    {
        Assert.Equal(185, s_run.Finding().Positions.Single().EngineHours);
        Assert.Equal([100, 150, 160, 160, 185], Chain(s_run).Readings.Select(r => r.Hours));
        Assert.Equal([100, 150, 160, 0, 25], Chain(s_run).Readings.Select(r => r.Shown));
        Assert.Empty(Chain(s_run).SetAside);
        Assert.Empty(s_run.History().Contradictions);
    }

    [Fact]
    public void A_used_meter_with_more_hours_on_it_is_no_leap() =>
        Assert.Equal(185, Last(Dock.OneBoat().With(s_new with { NewHours = 900 }, Dock.Hours("2026-04-01T10:00", 925))));

    [Fact]
    public void Where_nobody_read_the_old_one_the_gap_is_bridged_and_marked()
    {
        var blind = Dock.OneBoat().With(Dock.Hours("2026-02-01T10:00", 150), s_new with { OldHours = null }, Dock.Hours("2026-04-01T10:00", 25));
        Assert.Equal([100, 150, 150, 175], Chain(blind).Readings.Select(r => r.Hours));
        Assert.Equal([false, false, true, false], Chain(blind).Readings.Select(r => r.Bridged));
        Assert.Equal(new HoursAt(150, true), Chain(blind).At(Dock.Kept(s_new.Entry!)));
    }

    [Fact]
    public void A_trial_in_the_new_meters_hours_has_the_engines() // 160 + 25 at the trial
    {
        var trial = Dock.OneBoat().With(s_new, Dock.Trial("2026-04-01T10:00", 5500, 25)).Mounting().Trials.Single();
        Assert.Equal((185, false), (trial.Hours, trial.HoursBridged));
    }

    [Fact]
    public void Drift_is_the_same_whichever_meter_showed_the_hours()
    {
        var whole = Trialled.Boat((100, 5500), (150, 5550), (200, 5610));
        var swapped = Trialled.Boat((100, 5500), (150, 5550), (40, 5610)).With(new ReplaceMeter(Dock.At(Trialled.Day(1.5), "swap"), "e1", 0, 160));
        Assert.Equal(whole.Mounting().Drift, swapped.Mounting().Drift);
    }

    [Fact]
    public void What_does_not_fit_is_asked_about_in_what_the_meter_showed()
    {
        var odd = s_run.With(Dock.Hours("2026-04-02T10:00", 2500), Dock.Hours("2026-04-03T10:00", 27));
        var asked = Assert.Single(odd.History().Contradictions);
        Assert.Contains("read 25 h on 2026-04-01 and 2500 h on 2026-04-02", asked.Question, StringComparison.Ordinal);
        Assert.Equal(187, odd.Finding().Positions.Single().EngineHours);
    }

    [Fact]
    public void A_last_reading_of_the_old_one_that_cannot_be_is_asked_about()
    {
        var odd = Dock.OneBoat().With(Dock.Hours("2026-02-01T10:00", 150), Dock.Hours("2026-02-10T10:00", 155), s_new with { OldHours = 16 }, Dock.Hours("2026-04-01T10:00", 25));
        Assert.Equal(Dock.Id("new meter"), Assert.Single(Assert.Single(odd.History().Contradictions).Entries));
        Assert.Equal(180, Last(odd));
    }

    /// <summary>A dock writes whole minutes, and the device's counter of a correction says only when it was typed.</summary>
    [Fact]
    public void One_that_is_amended_later_keeps_its_place_among_the_readings_of_its_minute()
    {
        var read = Dock.Hours("2026-03-01T10:00", 0);
        var amended = s_new with { Entry = Dock.At("2026-03-01T10:00", "new meter 2", amends: "new meter") with { Count = 9, EnteredAt = "2026-03-01T15:00" } };
        var chain = Chain(Dock.OneBoat().With(s_new, read with { Entry = read.Entry! with { Count = 2 } }, amended));
        Assert.Empty(chain.SetAside);
        Assert.Equal([100, 160, 160, 160], chain.Readings.Select(r => r.Hours));
    }

    [Fact]
    public void One_that_did_not_happen_puts_the_readings_back_on_one_meter()
    {
        var back = s_run.With(new Retract(Dock.At("2026-04-02T10:00", "back"), Dock.Id("new meter"), "did_not_happen", Engine: "e1"));
        Assert.Single(back.History().Contradictions, c => c.Kind == ContradictionKind.HoursOutOfLine);
    }

    private static MeterChain Chain(Fleet fleet) => fleet.History().Meters["e1"];

    private static double Last(Fleet fleet) => Chain(fleet).Readings[^1].Hours;
}
