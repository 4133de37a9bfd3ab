using FleetWake.Web.Office.Rules;

namespace FleetWake.Journey.Tests.Office;

/// <summary>Holidays out of a calendar file. All-day events end on the day after their last one: RFC 5545, section 3.6.1.</summary>
public sealed class HolidayFileTests
{
    [Fact]
    public void All_day_events_are_taken_repeated_ones_over_three_years_and_meetings_are_not()
    {
        var dates = HolidayFile.Read(Calendar(
            "DTSTART;VALUE=DATE:20261225\r\nDTEND;VALUE=DATE:20261227\r\nSUMMARY:Two days",
            "DTSTART;VALUE=DATE:20200517\r\nRRULE:FREQ=YEARLY\r\nSUMMARY:Every year",
            "DTSTART:20261201T090000Z\r\nDTEND:20261201T100000Z\r\nSUMMARY:A meeting"), new DateOnly(2026, 11, 30));
        Assert.Equal(["2026-12-25", "2026-12-26", "2027-05-17", "2028-05-17", "2029-05-17"], dates!.Select(HolidayFile.Written));
    }

    [Theory]
    [InlineData("")]
    [InlineData("not a calendar")]
    [InlineData("BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nDTSTART;VALUE=DATE:2026")]
    public void What_is_no_calendar_gives_no_dates(string text) => Assert.Empty(HolidayFile.Read(text, new DateOnly(2026, 11, 30)) ?? []);

    [Fact]
    public void An_event_that_repeats_without_end_and_daily_is_cut() =>
        Assert.InRange(HolidayFile.Read(Calendar("DTSTART;VALUE=DATE:20261201\r\nRRULE:FREQ=DAILY\r\nSUMMARY:Always"), new DateOnly(2026, 11, 30))!.Count, 1, 400);

    [Fact]
    public void Dates_are_typed_one_a_line_or_with_commas() => Assert.Equal(["2026-12-25", "2026-12-26", "x"], HolidayFile.Typed("2026-12-25,\r\n2026-12-26 x\n"));

    private static string Calendar(params string[] events) =>
        "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//test//EN\r\n"
        + string.Concat(events.Select((e, n) => $"BEGIN:VEVENT\r\nUID:{n}@test\r\nDTSTAMP:20260101T000000Z\r\n{e}\r\nEND:VEVENT\r\n")) + "END:VCALENDAR\r\n";
}
