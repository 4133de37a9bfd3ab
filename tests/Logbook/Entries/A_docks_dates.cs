using FleetWake.Logbook.Engines;
using NodaTime;
using NodaTime.Text;

namespace FleetWake.Logbook.Tests.Entries;

/// <summary>Local times, zones and offsets, held against NodaTime's zones. Of 2025, which every copy of the zone database knows.</summary>
public class A_docks_dates
{
    public static TheoryData<string> Zones =>
    [
        "Pacific/Auckland", "Pacific/Chatham", "Australia/Lord_Howe", "Australia/Brisbane", "Asia/Kolkata", "Europe/London", "Europe/Madrid",
        "Atlantic/Azores", "America/St_Johns", "America/New_York", "America/Phoenix", "America/Los_Angeles", "America/Argentina/Buenos_Aires", "Pacific/Honolulu",
    ];

    [Theory]
    [MemberData(nameof(Zones))]
    public void A_local_time_without_offset_is_the_docks_own_through_a_whole_year(string zone)
    {
        var noda = DateTimeZoneProviders.Tzdb[zone];
        for (var local = new LocalDateTime(2025, 1, 1, 0, 30); local.Year == 2025; local = local.PlusMinutes(7 * 60 + 30))
        {
            var mapping = noda.MapLocal(local);
            var text = LocalDateTimePattern.GeneralIso.Format(local);
            if (mapping.Count == 0) Refused(text, zone, "time_skipped");
            else if (mapping.Count == 2) Refused(text, zone, "time_twice");
            else Same(mapping.Single(), Keep(text, zone), local);
        }
    }

    [Theory]
    [MemberData(nameof(Zones))]
    public void Every_half_hour_about_a_change_of_clocks_is_judged_as_the_zone_judges_it(string zone)
    {
        var noda = DateTimeZoneProviders.Tzdb[zone];
        var year = new Interval(Instant.FromUtc(2025, 1, 1, 0, 0), Instant.FromUtc(2026, 1, 1, 0, 0));
        foreach (var change in noda.GetZoneIntervals(year).Skip(1).Select(i => i.Start))
        {
            for (var step = -6; step <= 6; step++)
            {
                var at = change.Plus(Duration.FromMinutes(30 * step)).InZone(noda);
                var withOffset = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:sso<+HH:mm>").Format(at.ToOffsetDateTime());
                Same(at, Keep(withOffset, zone), at.LocalDateTime);
                Same(at, Keep(InstantPattern.General.Format(at.ToInstant()), zone), at.LocalDateTime); // "Z"

                var mapping = noda.MapLocal(at.LocalDateTime);
                var bare = LocalDateTimePattern.GeneralIso.Format(at.LocalDateTime);
                if (mapping.Count == 2) Refused(bare, zone, "time_twice");
                else Same(at, Keep(bare, zone), at.LocalDateTime);
            }
        }
    }

    [Fact]
    public void The_hour_that_the_clocks_skip_is_refused_without_an_offset_and_believed_with_one()
    {
        Refused("2025-09-28T02:30", "Pacific/Auckland", "time_skipped");
        Assert.Equal(new DateOnly(2025, 9, 28), Keep("2025-09-28T02:30+12:00", "Pacific/Auckland").Date());
    }

    [Fact]
    public void The_hour_that_comes_twice_is_told_apart_by_its_offset()
    {
        Refused("2025-04-06T02:30", "Pacific/Auckland", "time_twice");
        var first = Keep("2025-04-06T02:30+13:00", "Pacific/Auckland");
        var second = Keep("2025-04-06T02:30+12:00", "Pacific/Auckland");
        Assert.Equal(TimeSpan.FromHours(1), second.Happened() - first.Happened());
        Assert.True(EntryOrder.Instance.Compare(first, second) < 0);
        Assert.Equal(first.Date(), second.Date());
    }

    [Fact]
    public void An_offset_of_another_part_of_the_world_is_refused_and_a_law_of_last_week_is_believed()
    {
        Refused("2025-07-01T10:00+02:00", "Pacific/Auckland", "offset_not_of_zone");
        Assert.Equal(new DateOnly(2025, 7, 1), Keep("2025-07-01T10:00+13:00", "Pacific/Auckland").Date());
    }

    [Fact]
    public void The_date_is_the_docks_and_not_the_servers()
    {
        var kept = Keep("2025-12-31T23:30", "Pacific/Honolulu");
        Assert.Equal(new DateOnly(2025, 12, 31), kept.Date());
        Assert.Equal(new DateTime(2026, 1, 1, 9, 30, 0), kept.Happened().UtcDateTime);
    }

    [Fact]
    public void A_dock_may_keep_UTC()
    {
        Assert.Equal("UTC", Keep("2025-07-01T10:00", "UTC").Zone);
        Assert.Equal(TimeSpan.Zero, Keep("2025-07-01T10:00", "Etc/UTC").HappenedAt.Offset);
    }

    private static void Same(ZonedDateTime expected, Entry entry, LocalDateTime local)
    {
        Assert.Equal(expected.ToDateTimeOffset(), entry.Happened());
        Assert.Equal(expected.Offset.ToTimeSpan(), entry.HappenedAt.Offset);
        Assert.Equal(local.Date.ToDateOnly(), entry.Date());
    }

    private static Entry Keep(string happenedAt, string zone) =>
        Assert.IsType<Decision.Keep>(ReadHours.Decide(Hours(happenedAt, zone), Dock.Arrived)).Facts[0].Fact.Entry;

    private static void Refused(string happenedAt, string zone, string reason) =>
        Spec.Given().When(Hours(happenedAt, zone)).ThenRefuses("/entry/happenedAt", reason);

    private static ReadHours Hours(string happenedAt, string zone) => new(new Stamp(Dock.Id("a"), "mech-1", happenedAt, zone), "e1", 1);
}
