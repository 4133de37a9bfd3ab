using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Mountings;

public class Fitting_a_prop
{
    private static readonly MountProp Good =
        new(Dock.At("2026-01-05T08:00", "mount"), "kea", "single", "p1", 100, true, true, false, 25, "pound_force_foot", 1, true);

    [Fact]
    public void It_is_kept_on_the_boat_with_a_notice_on_the_prop_under_one_entry() => Spec.Given().When(Good)
        .Then(
            ("boat/kea", new PropMounted(Dock.Kept(Good.Entry!), "kea", Position.Single, "p1", 100, true, true, false, 25, TorqueUnit.PoundForceFoot, 1, true)),
            ("prop/p1", new PropIssued(Dock.Kept(Good.Entry!), "p1", "kea", Position.Single)))
        .Naming(("/boat", "boat/kea"), ("/prop", "prop/p1"));

    [Fact]
    public void A_sheet_left_blank_says_nothing() =>
        Spec.Given().When(new MountProp(Good.Entry, "kea", "single", "p1")).Then(
            ("boat/kea", new PropMounted(Dock.Kept(Good.Entry!), "kea", Position.Single, "p1", null, null, null, null, null, null, null, null)),
            ("prop/p1", new PropIssued(Dock.Kept(Good.Entry!), "p1", "kea", Position.Single)));

    [Fact]
    public void A_nut_is_never_backed_off() => Spec.EachIsRefused(
        (Good with { SlotsAdvanced = -1 }, "/slotsAdvanced", "backed_off"),
        (Good with { SlotsAdvanced = 11 }, "/slotsAdvanced", "out_of_range"));

    [Fact]
    public void A_torque_that_no_nut_takes_is_refused() => Spec.EachIsRefused(
        (Good with { Torque = -3 }, "/torque", "out_of_range"),
        (Good with { Torque = 0 }, "/torque", "out_of_range"),
        (Good with { Torque = 300 }, "/torque", "out_of_range"),
        (Good with { Torque = double.NaN }, "/torque", "out_of_range"),
        (Good with { Torque = null }, "/torque", "missing"),
        (Good with { TorqueUnit = null }, "/torqueUnit", "missing"),
        (Good with { TorqueUnit = "furlong" }, "/torqueUnit", "unknown_word"));

    [Fact]
    public void It_needs_boat_place_and_prop() => Spec.EachIsRefused(
        (Good with { Boat = null }, "/boat", "missing"),
        (Good with { Position = null }, "/position", "missing"),
        (Good with { Position = "left" }, "/position", "unknown_word"),
        (Good with { Prop = null }, "/prop", "missing"),
        (Good with { Hours = -1 }, "/hours", "out_of_range"));

    [Fact]
    public void A_prop_on_two_boats_is_kept_and_asked_about() =>
        Spec.Given(Dock.Boat(), Dock.Boat(boat: "tui"), Dock.Mounted()).When(Dock.Mounted("2026-02-01T09:00", boat: "tui"))
            .ThenAsks("tui", ContradictionKind.PropInTwoPlaces);
}
