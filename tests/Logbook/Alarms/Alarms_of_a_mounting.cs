using FleetWake.Logbook.Alarms;
using FleetWake.Logbook.Findings;

namespace FleetWake.Logbook.Tests.Alarms;

public class Alarms_of_a_mounting
{
    private static readonly DateTimeOffset At = new(2026, 6, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly FactLog None = FactLog.Empty("alarms/m");

    private static readonly Fleet Inside = Trialled.Boat((100, 5500));
    private static readonly Fleet Above = Trialled.Boat((100, 6100));
    private static readonly Fleet Below = Trialled.Boat((100, 4900));

    [Fact]
    public void A_finding_inside_raises_nothing() => Assert.Empty(Judged(Inside, None));

    [Fact]
    public void A_finding_outside_raises_one_alarm_with_what_it_stood_at()
    {
        var raised = Assert.IsType<AlarmRaised>(Assert.Single(Judged(Above, None)));
        Assert.Equal(("kea", Position.Single, AlarmKind.AboveBand, 1, 6100), (raised.Boat, raised.Position, raised.Kind, raised.Episode, raised.Rpm));
        Assert.Equal(Above.Mounting().Mounting, raised.Mounting);
        Assert.Equal((At, "worker"), (raised.Entry.HappenedAt, raised.Entry.Device));
    }

    [Fact]
    public void The_same_finding_judged_twice_says_nothing_new()
    {
        Assert.Equal(Judged(Above, None), Judged(Above, None));
        Assert.Empty(Judged(Above, After(None, Above), 1));
        Assert.Empty(Judged(Inside, After(None, Above, Inside), 2));
    }

    [Fact]
    public void Back_inside_lifts_it_and_outside_again_is_episode_two()
    {
        var lifted = Assert.IsType<AlarmLifted>(Assert.Single(Judged(Inside, After(None, Above), 1)));
        Assert.Equal((AlarmKind.AboveBand, 1), (lifted.Kind, lifted.Episode));
        var again = Assert.IsType<AlarmRaised>(Assert.Single(Judged(Above, After(None, Above, Inside), 2)));
        Assert.Equal(2, again.Episode);
        var log = After(None, Above, Inside, Above, Inside);
        Assert.Equal(4, log.Facts.Count);
        Assert.Equal(4, log.Facts.Select(f => f.Entry.Id).Distinct().Count());
    }

    [Fact]
    public void From_above_to_below_one_is_lifted_and_the_other_raised() =>
        Assert.Equal([typeof(AlarmLifted), typeof(AlarmRaised)], Judged(Below, After(None, Above), 1).Select(f => f.GetType()).OrderBy(t => t.Name));

    [Fact]
    public void All_of_it_in_one_instant_still_comes_out_right()
    {
        var log = None;
        foreach (var fleet in new[] { Above, Inside, Above, Below })
            log = Judged(fleet, log).Aggregate(log, (l, f) => l.Evolve(f));
        Assert.Equal(5, log.Facts.Count);
        Assert.Empty(Judged(Below, log));
    }

    [Fact]
    public void An_amended_sheet_raises_no_second_alarm()
    {
        var amended = Above.With(Dock.Mounted() with { Entry = Dock.At("2026-01-05T09:00", "amended", "mount p1 kea 2026-01-05T09:00"), SlotsAdvanced = 2 });
        Assert.Empty(Judged(amended, After(None, Above), 1));
        Assert.Equal(Above.Mounting().Mounting, amended.Mounting().Mounting);
    }

    [Fact]
    public void Without_a_prop_there_is_nothing_to_judge() => Assert.Empty(Judged(Above.With(Dock.Removed("2026-03-01T10:00")), None));

    [Fact]
    public void The_day_of_an_alarm_is_in_the_zone_of_its_dock() => Assert.Equal(Dock.Zone, Judged(Above, None)[0].Entry.Zone);

    private static FactLog After(FactLog log, params Fleet[] fleets) =>
        fleets.Select((f, i) => (Fleet: f, At: i)).Aggregate(log, (l, f) => Judged(f.Fleet, l, f.At).Aggregate(l, (k, fact) => k.Evolve(fact)));

    private static IReadOnlyList<IFact> Judged(Fleet fleet, FactLog told, int days = 0)
    {
        var finding = fleet.Finding();
        return JudgeAlarms.Of(finding, finding.Positions.Single(), told, At.AddDays(days));
    }
}
