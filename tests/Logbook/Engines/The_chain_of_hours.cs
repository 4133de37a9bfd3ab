using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Engines;

public class The_chain_of_hours
{
    [Fact]
    public void Readings_that_can_all_be_true_are_the_chain_in_whatever_order_they_came()
    {
        var chain = Chain((20, 130), (1, 100), (10, 115));
        Assert.Equal([100, 115, 130], chain.Readings.Select(r => r.Hours));
        Assert.Empty(chain.SetAside);
    }

    [Fact]
    public void A_digit_that_slipped_is_set_aside_and_the_chain_goes_on() => SetAside([5210], (1, 500), (10, 521), (20, 5210), (30, 540), (40, 560));

    [Fact]
    public void A_digit_that_slipped_in_the_first_reading_is_set_aside() => SetAside([5210], (1, 5210), (10, 530), (20, 540));

    [Fact]
    public void A_reading_that_runs_backwards_is_set_aside() => SetAside([90], (1, 100), (10, 110), (20, 90), (30, 120));

    [Fact]
    public void A_stuck_meter_is_no_contradiction() => SetAside([], (1, 100), (10, 100), (20, 100));

    [Fact]
    public void A_meter_cannot_run_faster_than_the_clock() => SetAside([149], (1, 100), (2, 149), (10, 160), (20, 170)); // 49 h in a day

    [Fact]
    public void A_meter_may_run_as_fast_as_the_clock_and_an_hour_of_rounding() => SetAside([], (1, 100), (2, 125));

    [Fact]
    public void Whole_hours_read_after_tenths_are_no_contradiction()
    {
        SetAside([], (1, 521.9), (2, 521), (3, 530.2));
        SetAside([520.9], (1, 510), (2, 521.2), (3, 520.9), (4, 530.2));
    }

    [Fact]
    public void Whole_hours_never_creep_backwards() => SetAside([520.5, 520, 519.5], (1, 521.5), (2, 521), (3, 520.5), (4, 520), (5, 519.5), (6, 522), (7, 523));

    /// <summary>Two readings that cannot both be true, and nothing to tell between them: the later is believed, whichever arrived first.</summary>
    [Fact]
    public void Of_two_chains_of_one_length_the_one_that_ends_later_is_kept()
    {
        SetAside([5210], (1, 5210), (20, 530));
        SetAside([521], (1, 521), (20, 5300));
        SetAside([120], (1, 100), (10, 130), (20, 120), (40, 150)); // and of two ways to its end, the earlier reading
        SetAside([120], (40, 150), (20, 120), (10, 130), (1, 100));
    }

    [Fact]
    public void Hours_between_two_readings_are_bridged_by_the_clock()
    {
        var chain = Chain((10, 100), (20, 120));
        Assert.Equal(new HoursAt(100, false), chain.At(Reading(10, 100).Entry));
        Assert.Equal(new HoursAt(110, true), chain.At(Other(15)));
        Assert.Equal(new HoursAt(120, true), chain.At(Other(25)));
        Assert.Null(chain.At(Other(5)));
    }

    [Fact]
    public void A_reading_set_aside_is_bridged_like_none() =>
        Assert.Equal(new HoursAt(110, true), Chain((10, 100), (15, 1100), (20, 120)).At(Reading(15, 1100).Entry));

    [Fact]
    public void Of_no_reading_nothing_is_known()
    {
        var chain = Chain();
        Assert.Empty(chain.Readings);
        Assert.Null(chain.At(Other(1)));
    }

    [Fact]
    public void Two_readings_at_one_minute_are_bridged_without_dividing_by_nothing()
    {
        var chain = MeterChain.Of([Reading(10, 100), Reading(10, 100.5)]);
        Assert.All(new[] { "a", "b", "c", "d" }, l => Assert.InRange(chain.At(Other(10, l))?.Hours ?? 100, 100, 100.5));
    }

    private static void SetAside(double[] expected, params (int Day, double Hours)[] readings) =>
        Assert.Equal(expected, Chain(readings).SetAside.Select(r => r.Hours));

    private static MeterChain Chain(params (int Day, double Hours)[] readings) => MeterChain.Of(readings.Select(r => Reading(r.Day, r.Hours)));

    private static MeterPoint Reading(int day, double hours) => new(Other(day, $"{hours}"), hours);

    private static Entry Other(int day, string label = "other") =>
        Dock.Kept(Dock.At(new DateTime(2026, 1, 1, 10, 0, 0).AddDays(day).ToString("s"), $"{day} {label}"));
}
