using FleetWake.Logbook.Fleet;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Statistics.Use;

namespace FleetWake.Logbook.Tests.Fleets;

/// <summary>What is worth a new number, and with it new findings of every boat.</summary>
public sealed class When_a_fit_has_moved
{
    private static readonly FleetPriorFitted Last = Fit(new DateOnly(2026, 5, 4));

    [Fact]
    public void The_same_figures_a_night_later_are_not_recorded() => Assert.Null(Why(Fit(new DateOnly(2026, 5, 5))));

    [Fact]
    public void Small_moves_add_up_so_a_month_is_enough()
    {
        Assert.Null(Why(Fit(new DateOnly(2026, 6, 2))));
        Assert.Equal("30 days have gone", Why(Fit(new DateOnly(2026, 6, 3))));
    }

    [Fact]
    public void A_prior_that_moves_by_more_than_two_hundredths_matters()
    {
        Assert.Null(Why(With(f => f with { Unseen = Shifted(f.Unseen, 0.019) })));
        Assert.Contains("not seen yet", Why(With(f => f with { Unseen = Shifted(f.Unseen, 0.021) })), StringComparison.Ordinal);
        Assert.Null(Why(With(f => f with { Groups = [f.Groups[0] with { Counts = Shifted(f.Groups[0].Counts, 0.019) }, .. f.Groups.Skip(1)] })));
        Assert.Contains("aluminium in salt water", Why(With(f => f with { Groups = [f.Groups[0] with { Counts = Shifted(f.Groups[0].Counts, 0.021) }, .. f.Groups.Skip(1)] })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pair_that_nobody_has_may_move_as_it_likes_and_a_new_one_is_held_against_what_was_expected_of_it()
    {
        Assert.Null(Why(With(f => f with { Groups = [f.Groups[0], f.Groups[1] with { Counts = Shifted(f.Groups[1].Counts, 0.3) }] })));
        Assert.Contains("stainless in salt water", Why(With(f => f with { Groups = [f.Groups[0], f.Groups[1] with { Mountings = 1, Counts = Shifted(f.Groups[1].Counts, 0.3) }] })), StringComparison.Ordinal);
        Assert.Null(Why(With(f => f with { Groups = [.. f.Groups, new GroupFigures("brass", "salt", 1, f.Unseen)] })));
        Assert.Contains("brass in salt water", Why(With(f => f with { Groups = [.. f.Groups, new GroupFigures("brass", "salt", 1, Shifted(f.Unseen, 0.3))] })), StringComparison.Ordinal);
    }

    [Fact]
    public void Noise_and_gross_errors_matter_from_three_per_cent()
    {
        Assert.Null(Why(With(f => f with { Noise = f.Noise with { MedianShare = 1.029 * f.Noise.MedianShare }, GrossChance = 0.971 * f.GrossChance })));
        Assert.Contains("scatter", Why(With(f => f with { Noise = f.Noise with { MedianShare = 1.031 * f.Noise.MedianShare } })), StringComparison.Ordinal);
        Assert.Contains("gross", Why(With(f => f with { GrossChance = 0.969 * f.GrossChance })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_gain_matters_from_a_quarter_of_its_standard_deviation_also_one_that_is_learned_first()
    {
        var last = Last with { Gains = [new("Skerry 50", 0.30, 0.04, 9)] };
        Assert.Null(FitMoved.Why(last, last with { Gains = [new("Skerry 50", 0.309, 0.03, 12)] }, []));
        Assert.Contains("Skerry 50", FitMoved.Why(last, last with { Gains = [new("Skerry 50", 0.311, 0.03, 12)] }, []), StringComparison.Ordinal);
        Assert.Contains("Skerry 50", FitMoved.Why(last, last with { Gains = [] }, []), StringComparison.Ordinal);
        Assert.Contains("Firth 20", FitMoved.Why(last, last with { Gains = [.. last.Gains, new("Firth 20", 0.9, 0.05, 3)] }, []), StringComparison.Ordinal);
    }

    [Fact]
    public void Use_of_a_month_the_alarm_and_the_method_matter()
    {
        Assert.Null(Why(Last with { Season = Last.Season with { MonthShares = [1.09, .. Last.Season.MonthShares.Skip(1)] } }));
        Assert.Contains("use", Why(Last with { Season = Last.Season with { MonthShares = [1.11, .. Last.Season.MonthShares.Skip(1)] } }), StringComparison.Ordinal);
        Assert.Contains("alarm", Why(Last with { Alarm = Last.Alarm with { Threshold = Last.Alarm.Threshold + 0.05 } }), StringComparison.Ordinal);
        Assert.Null(Why(Last with { Alarm = Last.Alarm with { FalseAlarmsPerBoatYear = 0.03 } }));
        Assert.Equal("another method", Why(Last with { Method = "fleet-0" }));
    }

    [Fact]
    public void A_prop_that_comes_new_matters_once_it_has_three_trials()
    {
        var two = Dock.OneBoat().With(Dock.Trial("2026-02-01T10:00", 5500, 120), Dock.Trial("2026-03-01T10:00", 5550, 150));
        var three = two.With(Dock.Trial("2026-04-01T10:00", 5600, 200));
        var mounting = two.History().Mountings.Single().Id;
        var now = With(f => f with { Members = [new MemberFigures(mounting, f.Unseen, 0.007, 0.3)] });
        Assert.Null(FitMoved.Why(Last, now, [two.History()]));
        Assert.Contains("three trials", FitMoved.Why(Last, now, [three.History()]), StringComparison.Ordinal);
        Assert.Null(FitMoved.Why(now, now, [three.History()]));
    }

    private static string? Why(FleetPriorFitted now) => FitMoved.Why(Last, now, []);

    private static FleetPriorFitted With(Func<FleetPriorFigures, FleetPriorFigures> change) => Last with { Drift = change(Last.Drift) };

    private static FleetPriorFitted Fit(DateOnly on)
    {
        var trade = FleetPriors.Trade;
        var at = new DateTimeOffset(on, new TimeOnly(2, 0), TimeSpan.FromHours(12));
        var drift = trade.Drift.Figures() with
        {
            Groups = [new("aluminium", "salt", 12, trade.Drift.Figures().Unseen), new("stainless", "salt", 0, trade.Drift.Figures().Unseen)],
        };
        return new(new Entry(Guid.Empty, "fleetwake", "program", 0, at, "Pacific/Auckland", at, at, 0, null), 1, FitFleetPrior.Method, drift, SeasonOfUse.Trade, trade.Alarm, [], 10, 12, 60);
    }

    /// <summary>The counts with a share of all of them moved from the heaviest place to the lightest, which is that much of total variation.</summary>
    private static List<int> Shifted(IReadOnlyList<int> counts, double share)
    {
        List<int> moved = [.. counts];
        var left = (int)(share * moved.Sum(c => (double)c));
        var to = moved.IndexOf(moved.Min());
        while (left > 0)
        {
            var from = moved.IndexOf(moved.Where((_, i) => i != to).Max());
            var some = Math.Min(left, Math.Max(1, moved[from] / 2));
            (moved[from], moved[to], left) = (moved[from] - some, moved[to] + some, left - some);
        }

        return moved;
    }
}
