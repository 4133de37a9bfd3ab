using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Mountings;

public class Taking_a_prop_off
{
    private static readonly RemoveProp Good = new(Dock.At("2026-01-05T08:00", "off"), "kea", "single", "worn", "p1", 140);

    [Fact]
    public void It_is_kept_on_the_boat_with_a_notice_on_the_prop() => Spec.Given().When(Good)
        .Then(
            ("boat/kea", new PropRemoved(Dock.Kept(Good.Entry!), "kea", Position.Single, "p1", 140, RemovalReason.Worn)),
            ("prop/p1", new PropReturned(Dock.Kept(Good.Entry!), "p1", "kea", Position.Single)))
        .Naming(("/boat", "boat/kea"), ("/prop", "prop/p1"));

    [Fact]
    public void A_tag_that_nobody_could_read_leaves_the_props_stream_alone() => Spec.Given().When(Good with { Prop = null })
        .Then(("boat/kea", new PropRemoved(Dock.Kept(Good.Entry!), "kea", Position.Single, null, 140, RemovalReason.Worn)))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void It_needs_boat_place_and_reason() => Spec.EachIsRefused(
        (Good with { Boat = null }, "/boat", "missing"),
        (Good with { Position = null }, "/position", "missing"),
        (Good with { Position = "Single" }, "/position", "unknown_word"),
        (Good with { Why = null }, "/why", "missing"),
        (Good with { Why = "bored" }, "/why", "unknown_word"),
        (Good with { Prop = "" }, "/prop", "missing"),
        (Good with { Hours = 1e9 }, "/hours", "out_of_range"));
}
