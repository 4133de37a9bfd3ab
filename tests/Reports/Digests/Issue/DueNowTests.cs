using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests;
using FleetWake.Reports.Digests.Issue;

namespace FleetWake.Reports.Tests.Digests.Issue;

/// <summary>Which digest is due, which were missed, and what clocks that jump do to that.</summary>
public sealed class DueNowTests
{
    private const string Dock = "north-pier";
    private static readonly HashSet<DateOnly> None = [];
    private static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Pacific/Auckland");
    private static readonly DateTimeOffset Long = DateTimeOffset.Parse("2019-01-01T00:00:00Z", CultureInfo.InvariantCulture);

    [Fact]
    public void Between_the_last_one_and_the_one_now_due_lie_the_missed_ones() =>
        Assert.Equal("2026-W13 after 2026-W11 2026-W12", Due("2026-03-25", ["2026-W09", "2026-W10"], Subscribed("a", "2026-01-01")));

    [Fact]
    public void One_that_was_issued_is_not_due_again() => Assert.Null(Due("2026-03-25", ["2026-W13"], Subscribed("a", "2026-01-01")));

    [Fact]
    public void Before_the_first_digest_none_was_missed() => Assert.Equal("2026-W13 after", Due("2026-03-25", [], Subscribed("a", "2026-01-01")));

    [Fact]
    public void A_week_in_which_nobody_was_to_receive_it_was_not_missed() => Assert.Equal(
        "2026-W15 after 2026-W11 2026-W14",
        Due("2026-04-08", ["2026-W10"], Subscribed("a", "2026-01-01"), Unsubscribed("a", "2026-03-14"), Subscribed("b", "2026-03-25")));

    [Fact]
    public void Readers_of_one_dock_are_none_of_the_whole_fleet() => Assert.Equal(
        "2026-W13 after", Due("2026-03-25", ["2026-W10"], new RecipientSubscribed(At("2026-01-01"), "a", WeeklyWear.Digest, Dock)));

    [Fact]
    public void A_digest_issued_by_a_clock_that_ran_ahead_hides_no_week() =>
        Assert.Equal("2026-W13 after 2026-W11 2026-W12", Due("2026-03-25", ["2026-W10", "2027-W10"], Subscribed("a", "2026-01-01")));

    [Fact]
    public void Changes_count_from_the_moment_of_the_edition_before_and_from_its_whole_day_where_it_was_made_up_for()
    {
        DueNow Due(string issuedAt) => DueNow.Of(
            Line(), new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal) { ["2026-W12"] = At(issuedAt).HappenedAt }, Readers(Subscribed("a", "2026-01-01")), At("2026-03-25").HappenedAt)!;
        Assert.Equal((new DateOnly(2026, 3, 16), At("2026-03-17").HappenedAt), (Due("2026-03-17").Since, Due("2026-03-17").SinceAt)); // the program was down on Monday
        Assert.Equal((new DateOnly(2026, 3, 16), null), (Due("2026-03-24").Since, Due("2026-03-24").SinceAt)); // made up for with the next one
        Assert.Null(Due("2027-03-17").SinceAt);
    }

    [Fact]
    public void A_schedule_that_is_taken_back_counted_until_then_and_sends_nothing_again()
    {
        // Monday was moved to Friday in February, and that is taken back on a Thursday in March.
        var friday = new ScheduleSet(At("2026-02-01"), ScheduledDigest.WeeklyWear, DayOfWeek.Friday, new TimeOnly(7, 0));
        var back = new Retracted(At(At("2026-03-19").HappenedAt, 9), friday.Entry.Id, RetractionReason.DidNotHappen);
        var log = new IFact[] { friday, back }.Aggregate(FactLog.Empty(StreamName.Operator), (l, fact) => l.Evolve(fact));
        var line = ScheduleBook.Of(log).Of(ScheduledDigest.WeeklyWear, null, Zone);
        Assert.Equal([DayOfWeek.Monday, DayOfWeek.Friday, DayOfWeek.Monday], line.Spans.Select(s => s.Schedule.Weekdays.Single()));
        Assert.Empty(ScheduleBook.Of(log).Set);
        var came = line.Backwards(At("2026-03-24").HappenedAt).TakeWhile(o => o.Day >= new DateOnly(2026, 3, 1)).Select(o => o.Day.ToString("MM-dd", CultureInfo.InvariantCulture));
        Assert.Equal(["03-23", "03-13", "03-06"], came);
    }

    [Fact]
    public void Of_a_very_long_absence_the_last_weeks_are_told() => Assert.Equal(
        DueNow.Most, DueNow.Of(Line(), Issued(["2020-W10"]), Readers(Subscribed("a", "2019-01-01")), DateTimeOffset.Parse("2026-03-25T12:00:00Z", CultureInfo.InvariantCulture))!.Missed.Count);

    [Fact]
    public void What_was_passed_over_is_not_due_when_the_clock_goes_back_an_hour_but_is_when_a_clock_a_year_ahead_passed_it_over()
    {
        var passed = new DigestPassedOver(At("2026-03-23"), WeeklyWear.Digest, "2026-W12", "2026-W13");
        Assert.Null(Due("2026-03-22", ["2026-W11"], Subscribed("a", "2026-01-01"), passed with { Entry = At("2026-03-21") }));
        Assert.Equal("2026-W12 after", Due("2026-03-22", ["2026-W11"], Subscribed("a", "2026-01-01"), passed with { Entry = At("2027-03-21") }));
    }

    /// <summary>Faults row 9: clocks that jump by an hour and by a year, both ways: none double, none missed of 1,000 periods.</summary>
    [Fact]
    public void Of_a_thousand_weeks_under_a_clock_that_jumps_each_has_its_digest_once()
    {
        var dice = new Random(20261130);
        var line = Line();
        var weeks = Occasions.Planned(line.Present, Zone, new DateOnly(2021, 1, 4), new DateOnly(2021, 1, 4).AddDays(7 * 1000 - 1), line.Holidays).ToList();
        Assert.Equal(1000, weeks.Count);
        var issued = new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal) { ["2020-W53"] = Long };
        List<IFact> facts = [Subscribed("a", "2019-01-01")];
        var (doubles, went) = (0, new List<string>());
        TimeSpan[] jumps = [TimeSpan.FromHours(1), TimeSpan.FromHours(-1), TimeSpan.FromDays(365), TimeSpan.FromDays(-365)];
        foreach (var week in weeks)
        {
            // The true moment, then ticks by a clock that jumps away and comes back.
            foreach (var jump in (TimeSpan[])[default, jumps[dice.Next(4)], default, jumps[dice.Next(4)], default])
            {
                var now = week.At + TimeSpan.FromMinutes(dice.Next(1, 300)) + jump;
                if (DueNow.Of(line, issued, Readers([.. facts]), now) is not { } due) continue;
                if (!issued.TryAdd(due.Newest.Period, now)) doubles++;
                went.Add(due.Newest.Period);
                foreach (var passed in due.Missed)
                    facts.Add(new DigestPassedOver(At(now, facts.Count), WeeklyWear.Digest, passed.Period, due.Newest.Period));
            }
        }

        Assert.Equal(0, doubles);
        Assert.Equal(went.Count, went.Distinct(StringComparer.Ordinal).Count());
        Assert.Empty(weeks.Select(w => w.Period).Except(issued.Keys));
    }

    /// <summary>Where each missed one is sent, a clock a year ahead sends a year of them before their time: nothing that anybody could use.</summary>
    [Fact]
    public void Weeks_that_a_clock_a_year_ahead_sent_before_their_time_are_sent_when_they_come_each_once()
    {
        var (line, readers) = (Line(), Readers(Subscribed("a", "2026-01-01")));
        var weeks = Occasions.Planned(line.Present, Zone, new DateOnly(2026, 3, 2), new DateOnly(2027, 3, 8), line.Holidays).ToList();
        var issued = weeks.Take(2).ToDictionary(w => w.Period, w => w.At.AddMinutes(1), StringComparer.Ordinal);
        var ahead = At("2026-03-11").HappenedAt.AddDays(365);
        var early = DueNow.Of(line, issued, readers, ahead)!;
        foreach (var occasion in early.Missed.Append(early.Newest)) issued.Add(occasion.Period, ahead);
        Assert.Equal(54, issued.Count);

        // Put back: a tick each now and then, and once an hour back as clocks are mended.
        var sent = new List<string>();
        foreach (var week in weeks.Skip(1))
            foreach (var hours in (double[])[0.01, 0.5, -0.6, 0.3, 5, 100])
            {
                var now = week.At.AddHours(hours);
                if (DueNow.Of(line, issued, readers, now) is not { } due) continue;
                Assert.Empty(due.Missed);
                issued[due.Newest.Period] = now;
                sent.Add(due.Newest.Period);
            }

        Assert.Equal(weeks.Skip(2).Select(w => w.Period), sent);
    }

    [Fact]
    public void A_clock_that_is_put_back_by_a_day_sends_nothing_twice()
    {
        var late = new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal) { ["2026-W11"] = At("2026-03-11").HappenedAt }; // two days late, for nothing ran
        Assert.Null(DueNow.Of(Line(), late, Readers(Subscribed("a", "2026-01-01")), At("2026-03-10").HappenedAt));
    }

    /// <summary>
    /// Faults row 12: two nodes, one of whose zone databases is old. British Columbia stays on -07:00 since March 2026, and the database of
    /// before still takes the hour back in November (shared/design/faults.md, finding 6, which cites Crunchy Data): an hour apart in winter.
    /// </summary>
    [Fact]
    public void Two_nodes_with_two_zone_databases_issue_each_once_on_the_same_day_by_the_clock_on_the_wall()
    {
        var nth = TimeZoneInfo.TransitionTime.CreateFloatingDateRule(new DateTime(1, 1, 1, 2, 0, 0), 3, 2, DayOfWeek.Sunday);
        var back = TimeZoneInfo.TransitionTime.CreateFloatingDateRule(new DateTime(1, 1, 1, 2, 0, 0), 11, 1, DayOfWeek.Sunday);
        var rule = TimeZoneInfo.AdjustmentRule.CreateAdjustmentRule(DateTime.MinValue.Date, DateTime.MaxValue.Date, TimeSpan.FromHours(1), nth, back);
        var old = TimeZoneInfo.CreateCustomTimeZone("old", TimeSpan.FromHours(-8), "old", "old", "old", [rule]);
        var mended = TimeZoneInfo.CreateCustomTimeZone("mended", TimeSpan.FromHours(-7), "mended", "mended");
        var (from, until) = (new DateOnly(2026, 11, 2), new DateOnly(2026, 11, 2).AddDays(9999));

        var daily = DigestSchedule.Usual(ScheduledDigest.DueList) with { Rhythm = DigestRhythm.Daily, Time = new TimeOnly(7, 0) };
        var (one, other) = (Occasions.Planned(daily, old, from, until, None).ToList(), Occasions.Planned(daily, mended, from, until, None).ToList());
        Assert.Equal(10_000, one.Count);
        Assert.Equal(one.Select(o => (o.Period, o.Day)), other.Select(o => (o.Period, o.Day)));
        Assert.All(one.Zip(other), pair => Assert.Equal((new TimeOnly(7, 0), new TimeOnly(7, 0)), (Wall(pair.First.At, old), Wall(pair.Second.At, mended))));
        Assert.InRange(one.Zip(other).Count(pair => pair.First.At != pair.Second.At), 3000, 5000); // the winters

        var (issued, readers, times) = (new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal) { [Periods.Day(from.AddDays(-1))] = Long }, Readers(Subscribed("a", "2019-01-01")), 0);
        ScheduleLine[] nodes = [new([(DateTimeOffset.MinValue, daily)], old, None), new([(DateTimeOffset.MinValue, daily)], mended, None)];
        foreach (var occasion in one.Take(400))
            for (var minutes = -90; minutes <= 30; minutes += 10)
                foreach (var node in minutes % 20 == 0 ? nodes : nodes.Reverse())
                {
                    if (DueNow.Of(node, issued, readers, occasion.At.AddMinutes(minutes)) is not { } due) continue;
                    Assert.Empty(due.Missed);
                    Assert.True(issued.TryAdd(due.Newest.Period, occasion.At.AddMinutes(minutes)), due.Newest.Period);
                    times++;
                }

        Assert.Equal(400, times);

        static TimeOnly Wall(DateTimeOffset at, TimeZoneInfo zone) => TimeOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime);
    }

    [Fact]
    public void A_schedule_by_another_clock_leaves_the_day_of_the_boats_to_their_dock()
    {
        // Monday 07:00 in Auckland is Sunday evening at a dock on the Faroes.
        var faroe = TimeZoneInfo.FindSystemTimeZoneById("Atlantic/Faroe");
        var line = new ScheduleLine([(DateTimeOffset.MinValue, DigestSchedule.Usual(ScheduledDigest.WeeklyWear) with { Zone = "Pacific/Auckland" })], faroe, None);
        var monday = line.Newest(At("2026-03-25").HappenedAt)!;
        Assert.Equal((new DateOnly(2026, 3, 23), new DateOnly(2026, 3, 22)), (monday.Day, line.DayAt(monday.At)));
        Assert.Equal(
            new DateOnly(2026, 3, 15),
            DueNow.Of(line, new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal) { ["2026-W12"] = monday.At.AddDays(-7) }, Readers(Subscribed("a", "2026-01-01")), monday.At)!.Since);
    }

    /// <summary>Faults row 10: two nodes whose clocks differ by 30 s, each ticking every minute: none double of 200.</summary>
    [Fact]
    public void Two_nodes_half_a_minute_apart_issue_each_of_two_hundred_once()
    {
        var line = Line();
        var weeks = Occasions.Planned(line.Present, Zone, new DateOnly(2026, 1, 5), new DateOnly(2026, 1, 5).AddDays(7 * 200 - 1), line.Holidays).ToList();
        var issued = new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal) { ["2026-W01"] = Long };
        var readers = Readers(Subscribed("a", "2019-01-01"));
        var (times, misses) = (0, 0);
        foreach (var week in weeks)
            for (var minute = -2; minute <= 2; minute++)
                foreach (var skew in (int[])[0, 30, 0, -30])
                {
                    // The unique key is what stands between two that see the same thing due: here it is the dictionary.
                    if (DueNow.Of(line, issued, readers, week.At.AddMinutes(minute).AddSeconds(skew)) is not { } due) continue;
                    if (issued.TryAdd(due.Newest.Period, week.At)) times++;
                    misses += due.Missed.Count;
                }

        Assert.Equal((200, 0), (times, misses));
    }

    private static string? Due(string day, string[] issued, params IFact[] facts) =>
        DueNow.Of(Line(), Issued(issued), Readers(facts), At(day).HappenedAt) is { } due ? string.Join(' ', [due.Newest.Period, "after", .. due.Missed.Select(m => m.Period)]) : null;

    private static Dictionary<string, DateTimeOffset> Issued(string[] periods) => periods.ToDictionary(p => p, _ => Long, StringComparer.Ordinal);

    private static ScheduleLine Line() => new([(DateTimeOffset.MinValue, DigestSchedule.Usual(ScheduledDigest.WeeklyWear))], Zone, new HashSet<DateOnly>());

    private static ReaderSpans Readers(params IFact[] facts) => ReaderSpans.Of(facts.Aggregate(FactLog.Empty(StreamName.Operator), (log, fact) => log.Evolve(fact)), WeeklyWear.Digest, null);

    private static RecipientSubscribed Subscribed(string who, string day) => new(At(day), who, WeeklyWear.Digest);

    private static RecipientUnsubscribed Unsubscribed(string who, string day) => new(At(day), who, WeeklyWear.Digest);

    private static Entry At(string day) => At(DateTimeOffset.Parse($"{day}T12:00:00+13:00", CultureInfo.InvariantCulture), 0);

    private static Entry At(DateTimeOffset at, int n)
    {
        var id = new Guid(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes($"{at:O} {n}")).AsSpan(0, 16));
        return new Entry(id, "fleetwake", "program", 0, at, "Pacific/Auckland", at, at, 0, null);
    }
}
