using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Mountings;
using NodaTime;

namespace FleetWake.Logbook.Tests.Duties;

public class What_is_due
{
    [Fact]
    public void Six_months_are_calendar_months_for_every_date_of_twenty_years()
    {
        for (var date = new LocalDate(2020, 1, 1); date.Year <= 2040; date = date.PlusDays(1))
            Assert.Equal(date.PlusMonths(6).ToDateOnly(), Outlook.InspectionDue(date.ToDateOnly()));
    }

    [Theory]
    [InlineData("2026-08-31", "2027-02-28")]
    [InlineData("2027-08-31", "2028-02-29")]
    [InlineData("2027-08-29", "2028-02-29")]
    [InlineData("2026-03-31", "2026-09-30")]
    [InlineData("2028-02-29", "2028-08-29")]
    [InlineData("2026-02-28", "2026-08-28")]
    public void A_month_end_is_clamped(string looked, string due) => Assert.Equal(Date(due), Outlook.InspectionDue(Date(looked)));

    /// <summary>A due date follows from the last look alone: judged on any day, once or often, it never creeps.</summary>
    [Fact]
    public void A_due_date_never_creeps_from_the_look_it_is_reckoned_from()
    {
        var finding = Dock.OneBoat().With(Dock.Look("2026-08-31T10:00")).Finding();
        for (var day = new DateOnly(2026, 9, 1); day.Year < 2029; day = day.AddDays(1))
        {
            var due = Outlook.Of(finding, day).Single();
            Assert.Equal(new DateOnly(2027, 2, 28), due.DueOn);
            Assert.Equal(day.DayNumber - new DateOnly(2027, 2, 28).DayNumber, due.DaysOverdue);
            Assert.Equal(day > due.DueOn, due.Overdue());
        }
    }

    [Fact]
    public void The_look_counts_on_the_docks_date()
    {
        // 23:30 on the 31st at the dock is the 31st, though it is the morning of the 31st in UTC, and 30 minutes later the 1st.
        Assert.Equal(new DateOnly(2027, 1, 31), Due(Dock.Look("2026-07-31T23:30")));
        Assert.Equal(new DateOnly(2027, 2, 1), Due(Dock.Look("2026-08-01T00:00")));
    }

    [Fact]
    public void The_last_of_looks_and_mountings_counts_and_a_late_one_is_no_matter()
    {
        Assert.Equal(new DateOnly(2026, 7, 5), Due()); // the mounting
        Assert.Equal(new DateOnly(2026, 8, 1), Due(Dock.Look("2026-02-01T10:00", "watch")));
        Assert.Equal(new DateOnly(2026, 8, 1), Due(Dock.Look("2026-02-01T10:00"), Dock.Look("2026-01-20T10:00")));
        Assert.Equal(new DateOnly(2026, 9, 1), Due(Dock.Look("2026-02-01T10:00"), Dock.Mounted("2026-03-01T10:00")));
        Assert.Equal(new DateOnly(2026, 7, 5), Due(Dock.Removed("2026-03-01T10:00")));
    }

    [Fact]
    public void Where_nobody_told_of_an_engine_the_clock_runs_from_the_prop_or_the_registration()
    {
        var found = new Fleet().With(Dock.Boat(), new FindFitted(Dock.At("2026-02-01T10:00", "found"), "kea", "single", "p1"));
        var due = Assert.Single(Outlook.Of(found.Finding(), new DateOnly(2026, 9, 1)));
        Assert.Equal((new DateOnly(2026, 8, 1), "no look at prop and shaft on record since 2026-02-01"), (due.DueOn, due.Why));
        Assert.Equal(new DateOnly(2026, 7, 5), Assert.Single(Outlook.Of(new Fleet().With(Dock.Boat()).Finding(), new DateOnly(2026, 9, 1))).DueOn);
    }

    [Fact]
    public void Hanging_an_engine_is_no_look_but_a_beginning()
    {
        Assert.Equal(new DateOnly(2026, 7, 5), Due(Dock.Fitted("2026-03-01T10:00")));
        var bare = new Fleet().With(Dock.Boat(), Dock.Fitted("2026-03-01T10:00"));
        Assert.Equal(new DateOnly(2026, 9, 1), Outlook.Of(bare.Finding(), default).Single().DueOn);
    }

    [Fact]
    public void A_strike_is_due_at_once_and_the_most_overdue_comes_first()
    {
        var due = Outlook.Of(
            Dock.OneBoat().With(Dock.Strike("2026-08-01T10:00"), Dock.Strike("2026-03-01T10:00", label: "earlier")).Finding(), new DateOnly(2026, 8, 3));
        Assert.Equal(
            [(DutyKind.AfterStrikeInspection, 155), (DutyKind.FirstOutingRetorque, 155), (DutyKind.SixMonthlyInspection, 29), (DutyKind.AfterStrikeInspection, 2)],
            due.Select(d => (d.Kind, d.DaysOverdue)));
        Assert.All(due, d => Assert.Equal(("kea", "KEA", "jetty", Position.Single), (d.Boat, d.BoatName, d.Dock, d.Position)));
    }

    [Fact]
    public void On_its_own_day_nothing_is_overdue()
    {
        var finding = Dock.OneBoat().Finding();
        Assert.False(Outlook.Of(finding, new DateOnly(2026, 7, 5)).Single().Overdue());
        Assert.True(Outlook.Of(finding, new DateOnly(2026, 7, 6)).Single().Overdue());
    }

    [Fact]
    public void A_boat_without_a_dock_has_no_calendar() => Assert.Empty(Outlook.Of(new Fleet().With(Dock.Mounted()).Finding(), new DateOnly(2027, 1, 1)));

    private static DateOnly Due(params ICommand[] records) =>
        Outlook.Of(Dock.OneBoat().With(records).Finding(), new DateOnly(2026, 6, 1)).Single(d => d.Kind == DutyKind.SixMonthlyInspection).DueOn;

    private static DateOnly Date(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
