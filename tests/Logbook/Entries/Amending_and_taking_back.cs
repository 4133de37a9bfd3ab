using CsCheck;
using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Entries;

public class Amending_and_taking_back
{
    private static readonly IFact Original = Read("original", 100);

    [Fact]
    public void The_last_typed_amendment_counts_whatever_its_happening()
    {
        var first = Amend("first", "original", 110, typed: "2026-02-01T10:00");
        var last = Amend("last", "original", 120, typed: "2026-02-03T10:00", happened: "2026-01-02T08:00");
        Counts([120], Original, first, last);
        Counts([120], last, Original, first);
    }

    [Fact]
    public void Of_two_typed_in_one_minute_the_higher_count_of_the_device_is_the_last()
    {
        var a = Amend("a", "original", 110, count: 8);
        var b = Amend("b", "original", 120, count: 9);
        Counts([120], Original, a, b);
        Counts([120], Original, b, a);
    }

    [Fact]
    public void A_chain_of_amendments_ends_in_the_last_typed() =>
        Counts([130], Original, Amend("a", "original", 110, "2026-02-01T10:00"), Amend("b", "a", 120, "2026-02-02T10:00"), Amend("c", "b", 130, "2026-02-03T10:00"));

    [Fact]
    public void Taking_an_amendment_back_restores_the_one_before()
    {
        IFact[] log = [Original, Amend("a", "original", 110, "2026-02-01T10:00"), Amend("b", "original", 120, "2026-02-02T10:00")];
        Counts([110], [.. log, Back("r", "b")]);
        Counts([100], [.. log, Back("r", "b"), Back("s", "a")]);
        Counts([120], [.. log, Back("s", "a")]);
    }

    [Fact]
    public void Taking_the_original_back_takes_its_amendments_with_it() =>
        Counts([], Original, Amend("a", "original", 110), Amend("b", "a", 120), Back("r", "original"));

    [Fact]
    public void Taking_a_retraction_back_restores_the_record_and_so_on()
    {
        IFact[] log = [Original, Back("r", "original")];
        Counts([], log);
        Counts([100], [.. log, Back("s", "r")]);
        Counts([], [.. log, Back("s", "r"), Back("t", "s")]);
        Counts([], [.. log, Back("s", "r"), Back("another", "original")]);
    }

    [Fact]
    public void An_amendment_that_arrives_first_counts_and_is_asked_about_until_its_record_comes()
    {
        var amendment = Amend("a", "original", 110);
        Counts([110], amendment);
        Assert.Equal([amendment], Effective.Of([amendment]).Unmatched);
        Assert.Empty(Effective.Of([amendment, Original]).Unmatched);
    }

    [Fact]
    public void Two_amendments_of_a_record_that_never_came_are_one_record()
    {
        IFact[] log = [Amend("a", "original", 110, "2026-02-01T10:00"), Amend("b", "original", 120, "2026-02-02T10:00")];
        Counts([120], log);
        Counts([], [.. log, Back("r", "original")]);
    }

    [Fact]
    public void A_retraction_that_arrives_first_is_asked_about_and_takes_back_what_comes()
    {
        Assert.Single(Effective.Of([Back("r", "original")]).Unmatched);
        Assert.Empty(Effective.Of([Back("r", "original"), Back("s", "r")]).Unmatched);
        Counts([], Back("r", "original"), Original);
    }

    [Fact]
    public void Amendments_of_each_other_are_one_record_with_all_that_amends_them()
    {
        IFact[] circle = [Amend("a", "b", 110, "2026-02-01T10:00"), Amend("b", "a", 120, "2026-02-02T10:00")];
        Counts([120], circle);
        Assert.All(Enumerable.Range(0, 20), i => Counts([130], [.. circle, Amend($"tail {i}", "a", 130, "2026-02-03T10:00")]));
    }

    [Fact]
    public void Retractions_of_each_other_take_nothing_else_back() => Counts([100], Original, Back("r", "s"), Back("s", "r"));

    [Fact]
    public void A_chain_as_long_as_a_log_is_settled()
    {
        const int Links = 20_000;
        IFact[] amended = [Original, .. Enumerable.Range(1, Links).Select(i => Amend($"a{i}", i == 1 ? "original" : $"a{i - 1}", i, count: i))];
        Counts([Links], amended);
        IFact[] back = [Original, .. Enumerable.Range(1, Links).Select(i => Back($"a{i}", i == 1 ? "original" : $"a{i - 1}"))];
        Counts([100], back); // an even number of retractions restores
    }

    [Fact]
    public void What_counts_never_depends_on_the_order_of_arrival() => (
        from links in Gen.Select(Gen.Int[0, 7], Gen.Int[0, 9], Gen.Bool, Gen.Int[0, 3]).Array[1, 8]
        from seed in Gen.Int[0, 1000]
        select (links, seed)).Sample(t =>
    {
        // Each entry amends or takes back any of ten, the not yet known among them, or is a record of its own.
        IFact Link((int Own, int Of, bool Amends, int Count) l, int i) =>
            l.Own == 0 || l.Of == i ? Read($"{i}", i) : l.Amends ? Amend($"{i}", $"{l.Of}", i, count: l.Count) : Back($"{i}", $"{l.Of}");
        var log = t.links.Select(Link).ToArray();
        var (counts, unmatched) = Effective.Of(log);
        new Random(t.seed).Shuffle(log);
        Assert.Equal(counts, Effective.Of(log).Facts);
        Assert.Equal(unmatched.ToHashSet(), Effective.Of(log).Unmatched.ToHashSet());
    });

    private static void Counts(double[] hours, params IFact[] log) => Assert.Equal(hours, Effective.Of(log).Facts.Cast<HoursRead>().Select(h => h.Hours));

    private static HoursRead Read(string label, double hours) => new(Dock.Kept(Dock.At("2026-01-05T08:00", label)), "e1", hours);

    private static HoursRead Amend(string label, string of, double hours, string typed = "2026-02-01T10:00", string happened = "2026-01-05T08:00", int count = 1) =>
        new(Dock.Kept(Dock.At(happened, label, of) with { EnteredAt = typed, Count = count }), "e1", hours);

    private static Retracted Back(string label, string entry) =>
        new(Dock.Kept(Dock.At("2026-03-01T08:00", label)), Dock.Id(entry), RetractionReason.DidNotHappen);
}
