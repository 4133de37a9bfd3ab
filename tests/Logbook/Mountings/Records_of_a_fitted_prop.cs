using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Mountings;

public class Records_of_a_fitted_prop
{
    private static readonly Stamp s_at = Dock.At("2026-05-01T08:00", "record");
    private static readonly Entry s_kept = Dock.Kept(s_at);
    private static readonly FindFitted s_found = new(s_at, "kea", "single", "p1", 140);

    [Fact]
    public void A_prop_found_fitted_is_kept_on_the_boat_with_a_notice_on_the_prop() => Spec.Given().When(s_found)
        .Then(
            ("boat/kea", new FoundFitted(s_kept, "kea", Position.Single, "p1", 140)),
            ("prop/p1", new PropFound(s_kept, "p1", "kea", Position.Single)))
        .Naming(("/boat", "boat/kea"), ("/prop", "prop/p1"));

    [Fact]
    public void A_prop_whose_tag_nobody_could_read_is_kept_on_the_boat_alone() => Spec.Given().When(s_found with { Prop = null })
        .Then(("boat/kea", new FoundFitted(s_kept, "kea", Position.Single, null, 140))).Naming(("/boat", "boat/kea"));

    [Fact]
    public void A_prop_is_found_at_a_place_of_a_boat() => Spec.EachIsRefused(
        (s_found with { Boat = null }, "/boat", "missing"),
        (s_found with { Position = null }, "/position", "missing"),
        (s_found with { Prop = FoundFitted.NotKnown }, "/prop", "not_an_id"),
        (s_found with { Hours = -1 }, "/hours", "out_of_range"));

    [Fact]
    public void A_cleaned_prop_is_kept()
    {
        Spec.Given().When(new CleanProp(s_at, "kea", "port")).Then(("boat/kea", new PropCleaned(s_kept, "kea", Position.Port))).Naming(("/boat", "boat/kea"));
        Spec.EachIsRefused((new CleanProp(s_at, "kea", null), "/position", "missing"), (new CleanProp(s_at, null, "port"), "/boat", "missing"));
    }

    [Fact]
    public void A_new_hub_is_kept_on_the_prop()
    {
        Spec.Given().When(new ReplaceHub(s_at, "p1", "hub-21")).Then(("prop/p1", new HubReplaced(s_kept, "p1", "hub-21"))).Naming(("/prop", "prop/p1"));
        Spec.Given().When(new ReplaceHub(s_at, "p1")).Then(("prop/p1", new HubReplaced(s_kept, "p1", null)));
        Spec.EachIsRefused((new ReplaceHub(s_at, null), "/prop", "missing"), (new ReplaceHub(s_at, "p1", "a kit"), "/hubKit", "not_an_id"));
    }
}
