using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Parts;

public class Recording_parts
{
    private static readonly StockPart Bag = new(Dock.At("2026-01-02T08:00", "bag"), "pin", "cotter_pin", "jetty", 50, " Cotter pin ");
    private static readonly CountPart Count = new(Dock.At("2026-01-02T08:00", "count"), "pin", "jetty", 0);
    private static readonly UsePart Use = new(Dock.At("2026-01-02T08:00", "use"), "pin", 2, "jetty", "kea", "port");
    private static readonly MountProp Mount = new(Dock.At("2026-01-02T08:00", "mount"), "kea", "single", "p1", Parts: [new("pin", 1, "jetty"), new("grease", 1)]);

    [Fact]
    public void Each_is_kept_on_the_parts_stream()
    {
        Spec.Given().When(Bag).Then(("part/pin", new PartStocked(Dock.Kept(Bag.Entry!), "pin", "Cotter pin", PartKind.CotterPin, "jetty", 50))).Naming();
        Spec.Given().When(Count).Then(("part/pin", new PartCounted(Dock.Kept(Count.Entry!), "pin", "jetty", 0))).Naming();
        Spec.Given().When(Use).Then(("part/pin", new PartUsed(Dock.Kept(Use.Entry!), "pin", "jetty", 2, "kea", Position.Port))).Naming(("/boat", "boat/kea"));
        Spec.Given().When(Use with { Boat = null, Position = null, Dock = null }).Then(("part/pin", new PartUsed(Dock.Kept(Use.Entry!), "pin", null, 2, null, null))).Naming();
    }

    [Fact]
    public void Parts_used_with_a_mounting_lie_on_their_own_streams_under_its_entry() => Spec.Given().When(Mount).Then(
        ("boat/kea", new PropMounted(Dock.Kept(Mount.Entry!), "kea", Position.Single, "p1", null, null, null, null, null, null, null, null)),
        ("prop/p1", new PropIssued(Dock.Kept(Mount.Entry!), "p1", "kea", Position.Single)),
        ("part/pin", new PartUsed(Dock.Kept(Mount.Entry!), "pin", "jetty", 1, "kea", Position.Single)),
        ("part/grease", new PartUsed(Dock.Kept(Mount.Entry!), "grease", null, 1, "kea", Position.Single)));

    [Fact]
    public void A_list_of_parts_names_each_once_with_how_many() => Spec.EachIsRefused(
        (Mount with { Parts = [new("pin", 1), new("pin", 2)] }, "/parts", "named_twice"),
        (Mount with { Parts = [new("pin", 1), new(null, 2)] }, "/parts/1/part", "missing"),
        (Mount with { Parts = [new("pin", null)] }, "/parts/0/quantity", "missing"),
        (Mount with { Parts = [new("pin", 0)] }, "/parts/0/quantity", "out_of_range"),
        (Mount with { Parts = [new("pin", 1, "?")] }, "/parts/0/dock", "not_an_id"),
        (Mount with { Parts = [.. Enumerable.Range(0, 21).Select(i => new PartSent($"part-{i}", 1))] }, "/parts", "too_many"));

    [Fact]
    public void A_null_in_the_list_is_refused_and_does_not_throw() =>
        Spec.Given().When(Mount with { Parts = [null!] }).ThenRefuses(("/parts/0/part", "missing"), ("/parts/0/quantity", "missing"));

    [Fact]
    public void What_came_is_of_a_kind_and_at_a_dock() => Spec.EachIsRefused(
        (Bag with { Part = "a pin" }, "/part", "not_an_id"),
        (Bag with { PartKind = "screw" }, "/partKind", "unknown_word"),
        (Bag with { Dock = null }, "/dock", "missing"),
        (Bag with { Quantity = 0 }, "/quantity", "out_of_range"),
        (Bag with { Quantity = 10_001 }, "/quantity", "out_of_range"),
        (Bag with { Name = "two\nlines" }, "/name", "not_a_name"));

    [Fact]
    public void None_may_be_left_but_not_fewer() => Spec.EachIsRefused((Count with { Quantity = -1 }, "/quantity", "out_of_range"), (Count with { Dock = null }, "/dock", "missing"));

    [Fact]
    public void A_position_is_one_of_a_boat() => Spec.EachIsRefused(
        (Use with { Boat = null }, "/boat", "missing"),
        (Use with { Position = "left" }, "/position", "unknown_word"),
        (Use with { Quantity = null }, "/quantity", "missing"));
}
