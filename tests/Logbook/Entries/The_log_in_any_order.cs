using CsCheck;
using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Entries;

public class The_log_in_any_order
{
    private const int Many = 10_000;

    /// <summary>Ten thousand facts: few instants, devices and counters, so that every rule of the order is needed.</summary>
    private static readonly IFact[] s_facts = [.. Enumerable.Range(0, Many).Select(i => new HoursRead(Entry(i), "e1", i % 500))];

    private static readonly FactLog s_clean = s_facts.OrderBy(f => f.Entry, EntryOrder.Instance).Aggregate(FactLog.Empty("engine/e1"), (log, f) => log.Evolve(f));

    [Fact]
    public void Ten_thousand_entries_shuffled_and_tripled_give_the_clean_log()
    {
        Assert.Equal(Many, s_clean.Facts.Count);
        foreach (var seed in new[] { 1, 2 })
        {
            IFact[] told = [.. s_facts, .. s_facts, .. s_facts];
            new Random(seed).Shuffle(told);
            var log = told.Aggregate(FactLog.Empty("engine/e1"), (l, f) => l.Evolve(f));
            Assert.Equal(s_clean.Facts, log.Facts);
            Assert.Equal(Effective.Of(s_clean.Facts).Facts, Effective.Of(log.Facts).Facts);
        }
    }

    [Fact]
    public void A_repeat_leaves_the_very_same_log() => Assert.Same(s_clean, s_clean.Evolve(s_facts[4711]));

    [Fact]
    public void Entries_are_ordered_by_instant_then_device_then_counter_then_id()
    {
        var later = Entry(0) with { HappenedAt = Entry(0).HappenedAt.AddTicks(1), Device = "a", Count = 0, Id = Guid.Empty };
        var otherDevice = Entry(0) with { Device = "phone-9", Count = 0, Id = Guid.Empty };
        var higherCount = Entry(0) with { Count = 99, Id = Guid.Empty };
        var higherId = Entry(0) with { Id = new Guid("ffffffff-ffff-4fff-bfff-ffffffffffff") };
        Assert.Equal([Entry(0), higherId, higherCount, otherDevice, later], new[] { later, otherDevice, higherCount, higherId, Entry(0) }.Order(EntryOrder.Instance));
    }

    [Fact]
    public void Arrival_and_offset_and_clock_error_do_not_order_but_the_instant_does()
    {
        var entry = Entry(0);
        Assert.Equal(0, EntryOrder.Instance.Compare(entry, entry with { ReceivedAt = entry.ReceivedAt.AddYears(1) }));
        Assert.Equal(0, EntryOrder.Instance.Compare(entry, entry with { HappenedAt = entry.HappenedAt.ToUniversalTime() }));
        Assert.Equal(0, EntryOrder.Instance.Compare(entry, entry with { HappenedAt = entry.HappenedAt.AddHours(1), ClockAheadSeconds = 3600 }));
        Assert.True(EntryOrder.Instance.Compare(entry, entry with { ClockAheadSeconds = 1 }) > 0);
    }

    [Fact]
    public void The_order_is_an_order() => Gen.Int[0, 300].Select(Entry).Array[3].Sample(e =>
    {
        var ab = Math.Sign(EntryOrder.Instance.Compare(e[0], e[1]));
        var bc = Math.Sign(EntryOrder.Instance.Compare(e[1], e[2]));
        Assert.Equal(-ab, Math.Sign(EntryOrder.Instance.Compare(e[1], e[0])));
        if (ab == bc) Assert.Equal(ab, Math.Sign(EntryOrder.Instance.Compare(e[0], e[2])));
        Assert.Equal(e[0].Id == e[1].Id, ab == 0);
    });

    private static Entry Entry(int i)
    {
        var at = new DateTimeOffset(2026, 1, 1, 0, 0, 0, TimeSpan.FromHours(13)).AddHours(i * 7919 % 40);
        return new Entry(Dock.Id($"entry {i}"), "mech-1", $"phone-{i % 3}", i / 3 % 5, at, Dock.Zone, at, at.AddDays(i % 17).ToUniversalTime(), 0, null);
    }
}
