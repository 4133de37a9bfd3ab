using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Boats;

public class Records_of_a_boat
{
    private static readonly Stamp s_at = Dock.At("2026-05-01T08:00", "record");
    private static readonly Entry s_kept = Dock.Kept(s_at);
    private static readonly RehomeBoat s_rehomed = new(s_at, "kea", "quay", "Pacific/Chatham", "silty", "rock");
    private static readonly ChangeRig s_rigged = new(s_at, "kea", "hydrofoil", "port");
    private static readonly PlanProp s_planned = new(s_at, "kea", "port", "towing", 13.25, 15, 4, "stainless");
    private static readonly SettleContradiction s_settled = new(s_at, "kea", "hours_out_of_line", [Dock.Id("one"), Dock.Id("two")], "both_stand");

    [Fact]
    public void A_new_home_is_kept_with_its_water_and_bottom() => Spec.Given().When(s_rehomed)
        .Then(("boat/kea", new BoatRehomed(s_kept, "kea", "quay", "Pacific/Chatham", WaterType.Silty, BottomKind.Rock))).Naming(("/boat", "boat/kea"));

    [Fact]
    public void A_new_home_needs_boat_dock_and_zone() => Spec.EachIsRefused(
        (s_rehomed with { Boat = null }, "/boat", "missing"),
        (s_rehomed with { Dock = null }, "/dock", "missing"),
        (s_rehomed with { DockZone = "Pacific/Nowhere" }, "/dockZone", "unknown_zone"),
        (s_rehomed with { Water = "wet" }, "/water", "unknown_word"),
        (s_rehomed with { Bottom = "lava" }, "/bottom", "unknown_word"));

    [Fact]
    public void A_cleaned_hull_is_kept()
    {
        Spec.Given().When(new CleanHull(s_at, "kea")).Then(("boat/kea", new HullCleaned(s_kept, "kea"))).Naming(("/boat", "boat/kea"));
        Spec.EachIsRefused((new CleanHull(s_at, "k e a"), "/boat", "not_an_id"));
    }

    [Fact]
    public void A_change_of_the_rig_is_kept_of_one_position_or_of_the_whole_boat()
    {
        Spec.Given().When(s_rigged).Then(("boat/kea", new RigChanged(s_kept, "kea", Position.Port, RigChange.Hydrofoil))).Naming(("/boat", "boat/kea"));
        Spec.Given().When(s_rigged with { Position = null }).Then(("boat/kea", new RigChanged(s_kept, "kea", null, RigChange.Hydrofoil)));
        Spec.EachIsRefused(
            (s_rigged with { Boat = null }, "/boat", "missing"),
            (s_rigged with { Change = null }, "/change", "missing"),
            (s_rigged with { Position = "left" }, "/position", "unknown_word"));
    }

    [Fact]
    public void A_change_of_the_rig_at_a_position_that_the_boat_does_not_have_is_asked_about() =>
        Spec.Given(Dock.Boat()).When(s_rigged).ThenAsks("kea", ContradictionKind.NoSuchPosition);

    [Fact]
    public void A_line_of_the_prop_plan_is_kept()
    {
        Spec.Given().When(s_planned)
            .Then(("boat/kea", new PropPlanned(s_kept, "kea", Position.Port, PropUse.Towing, 13.25, 15, 4, PropMaterial.Stainless))).Naming(("/boat", "boat/kea"));
        Spec.Given().When(s_planned with { Blades = null, Material = null })
            .Then(("boat/kea", new PropPlanned(s_kept, "kea", Position.Port, PropUse.Towing, 13.25, 15, null, null)));
    }

    [Fact]
    public void A_line_of_the_prop_plan_needs_position_use_and_size() => Spec.EachIsRefused(
        (s_planned with { Boat = null }, "/boat", "missing"),
        (s_planned with { Position = null }, "/position", "missing"),
        (s_planned with { Use = "racing" }, "/use", "unknown_word"),
        (s_planned with { DiameterInches = 4.9 }, "/diameterInches", "out_of_range"),
        (s_planned with { PitchInches = null }, "/pitchInches", "missing"),
        (s_planned with { Blades = 8 }, "/blades", "out_of_range"),
        (s_planned with { Material = "wood" }, "/material", "unknown_word"));

    [Fact]
    public void An_answer_to_a_question_is_kept() => Spec.Given().When(s_settled)
        .Then(("boat/kea", new ContradictionSettled(
            s_kept, "kea", ContradictionKind.HoursOutOfLine, [Dock.Id("one"), Dock.Id("two")], SettlementAnswer.BothStand)))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void An_answer_names_the_question_its_entries_and_what_is_so() => Spec.EachIsRefused(
        (s_settled with { Boat = null }, "/boat", "missing"),
        (s_settled with { Contradiction = "odd" }, "/contradiction", "unknown_word"),
        (s_settled with { Entries = [] }, "/entries", "too_few"),
        (s_settled with { Entries = null }, "/entries", "too_few"),
        (s_settled with { Entries = [.. Enumerable.Range(0, 9).Select(i => Dock.Id($"{i}"))] }, "/entries", "too_many"),
        (s_settled with { Entries = [Dock.Id("one"), Dock.Id("one")] }, "/entries", "named_twice"),
        (s_settled with { Entries = [Guid.Empty] }, "/entries", "empty_id"),
        (s_settled with { Answer = null }, "/answer", "missing"));
}
