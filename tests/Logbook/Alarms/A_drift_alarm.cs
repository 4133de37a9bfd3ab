using FleetWake.Logbook.Alarms;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Alarms;

/// <summary>A prop that wears by 60 RPM in 100 hours, is repitched, and wears on.</summary>
public class A_drift_alarm
{
    private static readonly DateTimeOffset At = new(2026, 12, 1, 0, 0, 0, TimeSpan.Zero);
    private static readonly FactLog None = FactLog.Empty("alarms/m");
    private static readonly (double, double)[] s_first = [.. Enumerable.Range(0, 8).Select(i => (100.0 + (40 * i), 5300.0 + (24 * i) + (i % 2 * 12)))];
    private static readonly (double, double)[] s_then = [.. Enumerable.Range(8, 8).Select(i => (100.0 + (40 * i), 5200.0 + (24 * (i - 8)) + (i % 2 * 12)))];
    private static readonly Fleet s_worn = Trialled.Boat(s_first);
    private static readonly Fleet s_repitched = s_worn.With(new RepitchProp(Dock.At(Trialled.Day(7.5), "repitch"), "p1", 13.5));
    private static readonly Fleet s_again = Trialled.Boat([.. s_first, .. s_then]).With(new RepitchProp(Dock.At(Trialled.Day(7.5), "repitch"), "p1", 13.5));

    [Fact]
    public void It_is_raised_at_the_trial_that_told_with_its_rate_of_false_ones()
    {
        var watch = s_worn.Mounting().Watch!;
        Assert.NotNull(watch.RaisedAt);
        Assert.Contains(s_worn.Mounting().Trials, t => t.Entry == watch.RaisedAt && t.On == watch.RaisedOn && t.Hours == watch.RaisedAtHours);
        var raised = Assert.IsType<AlarmRaised>(Assert.Single(Judged(s_worn, None)));
        Assert.Equal((AlarmKind.Drift, 1, 0, 0), (raised.Kind, raised.Episode, raised.Answered, raised.PriorNumber));
        Assert.Equal((watch.RaisedEvidenceToOne, watch.AlarmAtToOne, watch.RaisedAt), (raised.EvidenceToOne, raised.AlarmAtToOne, raised.Trial));
        Assert.True(watch.RaisedEvidenceToOne >= watch.AlarmAtToOne);
        Assert.Equal(FleetPriors.Trade.Alarm.FalseAlarmsPerBoatYear, raised.FalseAlarmsPerBoatYear);
        Assert.Equal(s_worn.Mounting().LevelRpm!.Value, raised.Rpm);
    }

    [Fact]
    public void A_boat_that_does_not_drift_raises_none() =>
        Assert.Null(Trialled.Boat([.. s_first.Select(t => (t.Item1, 5500.0))]).Mounting().Watch!.RaisedAt);

    [Fact]
    public void Work_on_the_prop_answers_it()
    {
        var watch = s_repitched.Mounting().Watch!;
        Assert.Equal((null, 1, 1), (watch.RaisedAt, watch.Answered, watch.EvidenceToOne));
        var lifted = Assert.IsType<AlarmLifted>(Assert.Single(Judged(s_repitched, After(s_worn))));
        Assert.Equal((AlarmKind.Drift, 1), (lifted.Kind, lifted.Episode));
    }

    [Fact]
    public void Wear_after_that_raises_another_even_when_both_are_seen_only_now()
    {
        Assert.Equal((1, true), (s_again.Mounting().Watch!.Answered, s_again.Mounting().Watch!.RaisedAt is not null));
        Assert.Equal([(typeof(AlarmLifted), 1), (typeof(AlarmRaised), 2)], Judged(s_again, After(s_worn)).Select(f => (f.GetType(), f is AlarmRaised r ? r.Episode : ((AlarmLifted)f).Episode)));
        Assert.Equal(2, Assert.IsType<AlarmRaised>(Assert.Single(Judged(s_again, After(s_worn, s_repitched)))).Episode);
    }

    [Fact]
    public void Judged_twice_it_says_nothing_new()
    {
        Assert.Empty(Judged(s_worn, After(s_worn)));
        Assert.Empty(Judged(s_repitched, After(s_worn, s_repitched)));
        Assert.Empty(Judged(s_again, After(s_again)));
        Assert.Empty(Judged(s_again, After(s_worn, s_again)));
    }

    [Fact]
    public void A_strike_answers_nothing() =>
        Assert.NotNull(s_worn.With(Dock.Strike(Trialled.Day(7.5))).Mounting().Watch!.RaisedAt);

    [Fact]
    public void Whoever_looked_since_and_let_it_go_on_is_not_asked_again()
    {
        bool Asked(Fleet fleet) => Attentions.Of(fleet.Finding()).Any(a => a.Kind == AttentionKind.Drifting);
        var day = s_worn.Mounting().Watch!.RaisedOn!.Value;
        Assert.True(Asked(s_worn));
        Assert.True(Asked(s_worn.With(Dock.Look($"{day.AddDays(-3):yyyy-MM-dd}T10:00"))));
        Assert.False(Asked(s_worn.With(Dock.Look($"{day.AddDays(3):yyyy-MM-dd}T10:00"))));
        Assert.True(Asked(s_worn.With(Dock.Look($"{day:yyyy-MM-dd}T08:00")))); // that morning
        Assert.NotNull(s_worn.With(Dock.Look($"{day.AddDays(3):yyyy-MM-dd}T10:00")).Mounting().Watch!.RaisedAt);
    }

    private static FactLog After(params Fleet[] fleets) =>
        fleets.Aggregate(None, (log, f) => Judged(f, log).Aggregate(log, (l, fact) => l.Evolve(fact)));

    private static IReadOnlyList<IFact> Judged(Fleet fleet, FactLog told)
    {
        var finding = fleet.Finding();
        return JudgeAlarms.Of(finding, finding.Positions.Single(), told, At);
    }
}
