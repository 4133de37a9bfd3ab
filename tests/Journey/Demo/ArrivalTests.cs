using FleetWake.Demo;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;

namespace FleetWake.Journey.Tests.Demo;

public class ArrivalTests
{
    private static readonly InventedRecord Record = DemoDays.Records[DemoDays.Usual];
    private static readonly List<IFact> Facts = [.. DecidedRecords.Facts(Record).Select(p => p.Fact)];

    [Fact]
    public void One_phone_is_a_day_ahead_and_its_dates_come_out_right()
    {
        var wrong = Assert.Single(Record.Batches, b => b.ClockAhead != TimeSpan.Zero);
        Assert.Equal(TimeSpan.FromDays(1), wrong.ClockAhead);
        Assert.Equal(new DateOnly(2026, 3, 18).AddDays(-139), Facts.First(f => f.Entry.Device == wrong.Device).Entry.Date());
    }

    [Fact]
    public void Some_records_came_weeks_late_and_the_newest_first()
    {
        var late = Record.Batches.MaxBy(b => b.Records.Max(r => (b.ReceivedAt - DateTimeOffset.Parse(r.Entry!.EnteredAt ?? r.Entry.HappenedAt!)).TotalDays))!;
        Assert.Equal("phone-quay-2", late.Device);
        var counts = late.Records.Select(r => r.Entry!.Count!.Value).ToList();
        Assert.Equal(counts.OrderDescending(), counts);
        Assert.InRange(counts.Count, 5, 60);
    }

    [Fact]
    public void Records_of_a_boat_came_before_its_registration()
    {
        var dovekie = Facts.Where(f => f is BoatRegistered { Boat: "dovekie" } or IAtPosition { Boat: "dovekie" }).ToList();
        var registered = dovekie.Single(f => f is BoatRegistered);
        Assert.True(dovekie.Count(f => f.Entry.ReceivedAt < registered.Entry.ReceivedAt) >= 2);
        Assert.DoesNotContain(dovekie, f => f.Entry.Happened() < registered.Entry.Happened());
    }

    [Fact]
    public void One_hour_of_one_night_came_twice()
    {
        var night = Facts.Where(f => f.Entry.HappenedAt.TimeOfDay.Hours == 2).OrderBy(f => f.Entry, EntryOrder.Instance).ToList();
        Assert.Equal(2, night.Count);
        Assert.True(night[0].Entry.HappenedAt.TimeOfDay > night[1].Entry.HappenedAt.TimeOfDay);
        Assert.NotEqual(night[0].Entry.HappenedAt.Offset, night[1].Entry.HappenedAt.Offset);
    }
}
