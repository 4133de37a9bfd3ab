using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Reports.Digests;

namespace FleetWake.Reports.Tests.Digests;

/// <summary>Which digests were missed, and when an operator has them.</summary>
public sealed class MissedPeriodsTests
{
    private static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Pacific/Auckland");

    [Fact]
    public void Between_the_last_one_and_the_one_now_due_lie_the_missed_ones() =>
        Assert.Equal(["2026-W11", "2026-W12"], Missed(["2026-W09", "2026-W10"], "2026-W13", Subscribed("a", "2026-01-01")));

    [Fact]
    public void Before_the_first_digest_none_was_missed() => Assert.Empty(Missed([], "2026-W13", Subscribed("a", "2026-01-01")));

    [Fact]
    public void A_week_in_which_nobody_was_to_receive_it_was_not_missed() =>
        Assert.Equal(
            ["2026-W11", "2026-W14"],
            Missed(["2026-W10"], "2026-W15", Subscribed("a", "2026-01-01"), Unsubscribed("a", "2026-03-14"), Subscribed("b", "2026-03-25")));

    [Fact]
    public void A_digest_issued_by_a_clock_that_ran_ahead_hides_no_week() =>
        Assert.Equal(["2026-W11", "2026-W12"], Missed(["2026-W10", "2027-W10"], "2026-W13", Subscribed("a", "2026-01-01")));

    [Fact]
    public void Of_a_very_long_absence_the_last_weeks_are_told() =>
        Assert.Equal(MissedPeriods.Most, Missed(["2020-W10"], "2026-W13", Subscribed("a", "2019-01-01")).Count);

    [Fact]
    public void What_the_operator_set_last_holds_and_without_it_monday_at_six()
    {
        Assert.Equal(DigestSchedule.Usual, DigestSchedule.Of(FactLog.Empty(StreamName.Operator)));
        var office = Log(
            new ScheduleSet(At("2026-02-01"), ScheduledDigest.WeeklyWear, DayOfWeek.Friday, new TimeOnly(15, 0)),
            new ScheduleSet(At("2026-01-01"), ScheduledDigest.WeeklyWear, DayOfWeek.Tuesday, new TimeOnly(7, 30)));
        Assert.Equal(new DigestSchedule(DayOfWeek.Friday, new TimeOnly(15, 0)), DigestSchedule.Of(office));
    }

    private static IReadOnlyList<string> Missed(string[] issued, string due, params IFact[] facts) =>
        MissedPeriods.Of(Log(facts), issued, due, Zone, DigestSchedule.Usual);

    private static FactLog Log(params IFact[] facts) => facts.Aggregate(FactLog.Empty(StreamName.Operator), (log, fact) => log.Evolve(fact));

    private static RecipientSubscribed Subscribed(string who, string day) => new(At(day), who, WeeklyWear.Digest);

    private static RecipientUnsubscribed Unsubscribed(string who, string day) => new(At(day), who, WeeklyWear.Digest);

    private static Entry At(string day)
    {
        var noon = DateTimeOffset.Parse($"{day}T12:00:00+13:00", System.Globalization.CultureInfo.InvariantCulture);
        var id = new Guid(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(day)).AsSpan(0, 16));
        return new Entry(id, "fleetwake", "program", 0, noon, "Pacific/Auckland", noon, noon, 0, null);
    }
}
