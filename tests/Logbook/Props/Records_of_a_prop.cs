using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Props;

public class Records_of_a_prop
{
    private static readonly RegisterProp Tagged = new(Dock.At("2026-01-05T08:00", "tag"), "p1", 13.25, 17, 3, "stainless", "left");
    private static readonly AcquireProp Bought = new(Dock.At("2026-01-05T08:00", "buy"), "p1", "rebuilt");
    private static readonly RepitchProp Repitched = new(Dock.At("2026-01-05T08:00", "repitch"), "p1", 15.2, 17.1, 13);

    [Fact]
    public void A_tag_is_kept_on_the_props_stream() => Spec.Given().When(Tagged)
        .Then(("prop/p1", new PropRegistered(Dock.Kept(Tagged.Entry!), "p1", 13.25, 17, 3, PropMaterial.Stainless, Rotation.Left)))
        .Naming();

    [Fact]
    public void Numbers_and_words_that_no_prop_has_are_refused() => Spec.EachIsRefused(
        (Tagged with { Prop = null }, "/prop", "missing"),
        (Tagged with { DiameterInches = null }, "/diameterInches", "missing"),
        (Tagged with { DiameterInches = 337 }, "/diameterInches", "out_of_range"), // millimetres
        (Tagged with { PitchInches = null }, "/pitchInches", "missing"),
        (Tagged with { PitchInches = -13 }, "/pitchInches", "out_of_range"),
        (Tagged with { PitchInches = double.NaN }, "/pitchInches", "out_of_range"),
        (Tagged with { Blades = null }, "/blades", "missing"),
        (Tagged with { Blades = 1 }, "/blades", "out_of_range"),
        (Tagged with { Blades = 8 }, "/blades", "out_of_range"),
        (Tagged with { Material = "bronze" }, "/material", "unknown_word"),
        (Tagged with { Rotation = null }, "/rotation", "missing"));

    [Fact]
    public void Coming_into_the_fleet_is_kept() => Spec.Given().When(Bought)
        .Then(("prop/p1", new PropAcquired(Dock.Kept(Bought.Entry!), "p1", PropCondition.Rebuilt)))
        .Naming(("/prop", "prop/p1"));

    [Fact]
    public void Coming_into_the_fleet_needs_a_state_we_know() => Spec.EachIsRefused(
        (Bought with { Prop = "?" }, "/prop", "not_an_id"),
        (Bought with { Condition = "shiny" }, "/condition", "unknown_word"),
        (Bought with { Condition = null }, "/condition", "missing"));

    [Fact]
    public void A_repitch_keeps_the_shops_numbers() => Spec.Given().When(Repitched)
        .Then(("prop/p1", new Repitched(Dock.Kept(Repitched.Entry!), "p1", 17.1, 15.2, 13)))
        .Naming(("/prop", "prop/p1"));

    [Fact]
    public void A_repitch_needs_only_the_pitch_after() => Spec.Given().When(Repitched with { PitchBeforeInches = null, DiameterAfterInches = null })
        .Then(("prop/p1", new Repitched(Dock.Kept(Repitched.Entry!), "p1", null, 15.2, null)));

    [Fact]
    public void A_repitch_to_no_pitch_is_refused() => Spec.EachIsRefused(
        (Repitched with { Prop = null }, "/prop", "missing"),
        (Repitched with { PitchAfterInches = null }, "/pitchAfterInches", "missing"),
        (Repitched with { PitchAfterInches = 0 }, "/pitchAfterInches", "out_of_range"),
        (Repitched with { PitchBeforeInches = 41 }, "/pitchBeforeInches", "out_of_range"),
        (Repitched with { DiameterAfterInches = double.PositiveInfinity }, "/diameterAfterInches", "out_of_range"));
}
