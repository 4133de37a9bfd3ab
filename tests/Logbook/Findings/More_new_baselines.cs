using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;
using FleetWake.Logbook.Season;

namespace FleetWake.Logbook.Tests.Findings;

/// <summary>Three trials, and something between the second and the third.</summary>
public class More_new_baselines
{
    private static readonly Fleet s_three = Trialled.Boat((100, 5500), (150, 5550), (200, 5600));
    private static readonly Stamp s_between = Dock.At(Trialled.Day(1.5), "between");

    public static TheoryData<ICommand, HistoryMarkKind, string> Beginning => new()
    {
        { new RepairProp(s_between, "p1", ["straightened", "balanced"]), HistoryMarkKind.Repair, "straightened, balanced" },
        { new ReplaceHub(s_between, "p1"), HistoryMarkKind.Hub, "new hub" },
        { new CleanProp(s_between, "kea", "single"), HistoryMarkKind.PropCleaned, "prop cleaned" },
        { new CleanHull(s_between, "kea"), HistoryMarkKind.HullCleaned, "hull cleaned" },
        { new ChangeRig(s_between, "kea", "trim_tabs"), HistoryMarkKind.Rig, "trim tabs changed" },
        { new ChangeRig(s_between, "kea", "other", "single"), HistoryMarkKind.Rig, "rig changed" },
        { new RelaunchBoat(s_between, "kea"), HistoryMarkKind.Relaunch, "relaunched" },
    };

    [Theory]
    [MemberData(nameof(Beginning))]
    public void It_begins_a_new_baseline_and_stands_in_the_picture(ICommand step, HistoryMarkKind kind, string label)
    {
        var found = s_three.With(step).Mounting();
        Assert.Equal([0, 0, 1], found.Trials.Select(t => t.Stretch));
        Assert.Equal((kind, label), (found.Marks[1].Kind, found.Marks[1].Label));
        Assert.Equal(175, found.Marks[1].Hours!.Value, 1e-9);
        Assert.Equal(5600, found.BaselineRpm);
    }

    [Fact]
    public void What_is_done_at_another_position_or_to_another_prop_does_not()
    {
        var elsewhere = s_three.With(
            new CleanProp(s_between, "kea", "port"), new ChangeRig(s_between with { Id = Dock.Id("rig") }, "kea", "hydrofoil", "port"), new ReplaceHub(s_between with { Id = Dock.Id("hub") }, "p2"));
        Assert.All(elsewhere.Mounting().Trials, t => Assert.Equal(0, t.Stretch));
    }

    /// <summary>The usual tachometer resolves 10 RPM.</summary>
    [Theory]
    [InlineData(5000, 5010, 0)] // as far off as a step: no change that it could show
    [InlineData(5000, 5011, 1)]
    [InlineData(5000, 4980, 1)]
    public void A_tachometer_that_shows_other_than_at_the_check_before_begins_one(double before, double then, int stretch)
    {
        var found = s_three.With(Check(0.5, before), Check(1.5, then));
        Assert.Equal(stretch, found.Mounting().Trials[^1].Stretch);
        Assert.Equal(stretch, found.Mounting().Marks.Count(m => m.Kind == HistoryMarkKind.Tachometer));
    }

    /// <summary>A gauge is off by a share, so it is off by fewer RPM where the engine turns slower; and there a step is the larger share.</summary>
    [Theory]
    [InlineData(5100, 5000, 3060, 3000, 0)] // 2 % both times
    [InlineData(5100, 5000, 3070, 3000, 0)] // 10 more than 2 % at 3000: a step
    [InlineData(5100, 5000, 3071, 3000, 1)]
    [InlineData(3060, 3000, 5060, 5000, 1)] // 60 RPM both times, 2 % and 1.2 %
    public void Checks_at_unlike_speeds_are_compared_by_share(double shown, double real, double then, double real2, int stretch)
    {
        var found = s_three.With(Check(0.5, shown) with { TrueRpm = real }, Check(1.5, then) with { TrueRpm = real2 });
        Assert.Equal(stretch, found.Mounting().Trials[^1].Stretch);
    }

    [Fact]
    public void A_new_hour_meter_stands_in_the_picture_and_begins_none()
    {
        var found = s_three.With(new ReplaceMeter(s_between, "e1", 175, 175)).Mounting();
        Assert.Equal((HistoryMarkKind.HourMeter, "new hour meter", 175), (found.Marks[1].Kind, found.Marks[1].Label, found.Marks[1].Hours!.Value));
        Assert.All(found.Trials, t => Assert.Equal(0, t.Stretch));
    }

    [Fact]
    public void A_first_check_brings_all_readings_right_and_begins_no_new_baseline()
    {
        var found = s_three.With(Check(1.5, 5100));
        Assert.Equal(2, found.Finding().Positions.Single().Engine!.Tachometer!.ErrorPercent, 1e-9);
        Assert.All(found.Mounting().Trials.Zip(s_three.Mounting().Trials), t => Assert.Equal(t.Second.TurnedRpm / 1.02, t.First.TurnedRpm, 1e-9));
        Assert.Empty(found.Mounting().Steps);
        Assert.All(found.Mounting().Trials, t => Assert.Equal(0, t.Stretch));
        Assert.Null(s_three.Finding().Positions.Single().Engine!.Tachometer);
    }

    [Fact]
    public void A_new_hub_does_not_clear_a_slipping_one()
    {
        var slipped = s_three.With(Dock.Look(Trialled.Day(1.2), "repair", "single", "hub_slip"), new ReplaceHub(s_between, "p1"));
        Assert.Single(slipped.Finding().Positions.Single().Uncleared);
        Assert.Empty(slipped.With(Dock.Look(Trialled.Day(1.7))).Finding().Positions.Single().Uncleared);
    }

    [Fact]
    public void Pitch_measured_after_a_repair_counts_from_then_on()
    {
        var repaired = s_three.With(new RepairProp(s_between, "p1", ["straightened"], 12.5)).Mounting();
        Assert.Equal(12.5, repaired.Prop.PitchInches);
        Assert.Equal(100 * (1 - (22.5 / (28.286987 * 5600 / 5500 * 12.5 / 13))), repaired.Trials[^1].SlipPercent!.Value, 1e-4);
        Assert.Equal(100 * (1 - (22.5 / (28.286987 * 5550 / 5500))), repaired.Trials[1].SlipPercent!.Value, 1e-4);
    }

    private static CheckTachometer Check(double trial, double shown) => new(Dock.At(Trialled.Day(trial), $"check {trial}"), "e1", shown, 5000);
}
