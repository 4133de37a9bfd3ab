using FleetWake.Store.Fleet;

namespace FleetWake.Store.Tests.Fleet;

/// <summary>When a fleet is to be fitted. No database.</summary>
public sealed class FitDueTests
{
    private static readonly TimeZoneInfo Oslo = TimeZoneInfo.FindSystemTimeZoneById("Europe/Oslo");

    // Afternoon in Oslo; the last night was at 2026-05-04 00:00 UTC.
    private static readonly DateTimeOffset Now = new(2026, 5, 4, 14, 0, 0, TimeSpan.Zero);

    private static FitLook Looked(double hoursAgo, long records = 100) => new(1000, records, Now.AddHours(-hoursAgo), null, null, null);

    private static RecordsSince Came(long records, long trials = 1, double hoursAgo = 1, bool quiet = true) =>
        new(2000, records, trials, records == 0 ? null : Now.AddHours(-hoursAgo), quiet);

    [Fact]
    public void Records_and_a_night_make_it_due_and_neither_alone()
    {
        Assert.True(FitDue.Of(Looked(20), Came(1), fitted: true, Now, Oslo));
        Assert.False(FitDue.Of(Looked(20), Came(0), fitted: true, Now, Oslo));
        Assert.False(FitDue.Of(Looked(13), Came(1), fitted: true, Now, Oslo));
        // A record without a trial still tells of use.
        Assert.True(FitDue.Of(Looked(20), Came(1, trials: 0), fitted: true, Now, Oslo));
    }

    [Fact]
    public void The_first_waits_for_a_trial_and_a_quiet_moment_but_not_for_the_night()
    {
        Assert.True(FitDue.Of(FitLook.None, Came(40), fitted: false, Now, Oslo));
        Assert.False(FitDue.Of(FitLook.None, Came(40, trials: 0), fitted: false, Now, Oslo));
        Assert.False(FitDue.Of(FitLook.None, Came(40, quiet: false), fitted: false, Now, Oslo));
        // Where it is never quiet, the night decides.
        Assert.True(FitDue.Of(FitLook.None, Came(40, hoursAgo: 20, quiet: false), fitted: false, Now, Oslo));
        // A look that found nothing to learn waits for another trial.
        Assert.False(FitDue.Of(Looked(1), Came(40, trials: 0), fitted: false, Now, Oslo));
    }

    [Fact]
    public void A_record_that_has_more_than_doubled_is_looked_at_the_same_day()
    {
        Assert.True(FitDue.Of(Looked(1, records: 100), Came(101), fitted: true, Now, Oslo));
        Assert.False(FitDue.Of(Looked(1, records: 100), Came(100), fitted: true, Now, Oslo));
        Assert.False(FitDue.Of(Looked(1, records: 100), Came(101, quiet: false), fitted: true, Now, Oslo));
    }

    [Fact]
    public void A_clock_that_ran_ahead_puts_nothing_off_and_a_failure_puts_it_off_by_an_hour()
    {
        Assert.True(FitDue.Of(Looked(-24 * 365), Came(1), fitted: true, Now, Oslo));
        Assert.False(FitDue.Of(Looked(20) with { FailedAt = Now.AddMinutes(-59) }, Came(1), fitted: true, Now, Oslo));
        Assert.True(FitDue.Of(Looked(20) with { FailedAt = Now.AddMinutes(-60) }, Came(1), fitted: true, Now, Oslo));
        Assert.True(FitDue.Of(Looked(20) with { FailedAt = Now.AddYears(1) }, Came(1), fitted: true, Now, Oslo));
    }

    [Theory]
    [InlineData("2026-05-04T14:00Z", "2026-05-04T00:00Z")]
    [InlineData("2026-05-03T23:59Z", "2026-05-03T00:00Z")]
    [InlineData("2026-03-29T00:59Z", "2026-03-28T01:00Z")] // before clocks jump from 2 to 3
    [InlineData("2026-03-29T01:00Z", "2026-03-29T01:00Z")] // 02:00 does not come: just after the gap
    [InlineData("2026-10-25T00:30Z", "2026-10-25T00:00Z")] // 02:30 for the first time
    [InlineData("2026-10-25T01:30Z", "2026-10-25T00:00Z")] // and for the second: still the same night
    public void The_last_night_is_by_the_offices_clock_also_where_clocks_are_set(string now, string night) => Assert.Equal(
        DateTimeOffset.Parse(night, System.Globalization.CultureInfo.InvariantCulture),
        FitDue.LastNight(DateTimeOffset.Parse(now, System.Globalization.CultureInfo.InvariantCulture), Oslo));
}
