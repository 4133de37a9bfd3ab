using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Parts;
using FleetWake.Logbook.Season;

namespace FleetWake.Logbook.Tests.Duties;

public class Records_of_use
{
    private const string Photo = "9F86D081884C7D659A2FEAA0C55AD015A3BF4F1B2B0B822CD15D6C15B0F00A08";

    private static readonly Stamp s_at = Dock.At("2026-05-05T08:00", "use");
    private static readonly Entry s_kept = Dock.Kept(s_at);
    private static readonly LookOver s_look = new(s_at, "kea", "single", "after_hire", "mark", "hire-7", Photo);
    private static readonly RetorqueNut s_retorque = new(s_at, "kea", "single", 25, "pound_force_foot", true, 120, [new PartSent("pin", 1, "jetty")]);
    private static readonly DoDuty s_duty = new(s_at, "kea", "grease", "single", 120, [new PartSent("grease", 1)]);

    [Fact]
    public void A_short_look_is_kept_with_its_hire_and_the_hash_of_its_photo() => Spec.Given().When(s_look)
        .Then(("boat/kea", new LookedOver(s_kept, "kea", Position.Single, LookMoment.AfterHire, "hire-7", LookSeen.Mark, Photo.ToLowerInvariant())))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void A_short_look_needs_its_moment_and_what_was_seen() => Spec.EachIsRefused(
        (s_look with { Moment = null }, "/moment", "missing"),
        (s_look with { Seen = "all_well" }, "/seen", "unknown_word"),
        (s_look with { Hire = "two words" }, "/hire", "not_an_id"),
        (s_look with { Photo = "photo.jpg" }, "/photo", "not_a_hash"));

    [Fact]
    public void A_re_torque_and_the_pin_it_used_are_one_entry_on_two_streams() => Spec.Given().When(s_retorque)
        .Then(
            ("boat/kea", new NutRetorqued(s_kept, "kea", Position.Single, 25, TorqueUnit.PoundForceFoot, true, 120)),
            ("part/pin", new PartUsed(s_kept, "pin", "jetty", 1, "kea", Position.Single)))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void A_torque_comes_with_its_unit_and_parts_with_their_number() => Spec.EachIsRefused(
        (s_retorque with { TorqueUnit = null }, "/torqueUnit", "missing"),
        (s_retorque with { Torque = 4000 }, "/torque", "out_of_range"),
        (s_retorque with { Parts = [new PartSent("pin", 0)] }, "/parts/0/quantity", "out_of_range"));

    [Fact]
    public void A_duty_done_keeps_its_rule_and_its_hours() => Spec.Given().When(s_duty)
        .Then(
            ("boat/kea", new DutyDone(s_kept, "kea", Position.Single, "grease", 120)),
            ("part/grease", new PartUsed(s_kept, "grease", null, 1, "kea", Position.Single)))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void Hours_of_a_duty_belong_to_an_engine() => Spec.EachIsRefused((s_duty with { Position = null }, "/position", "missing"));

    [Fact]
    public void Hours_read_with_a_duty_are_hours_of_the_engine() =>
        Assert.Equal(120, Dock.OneBoat().With(s_duty).Finding().Positions.Single().EngineHours);

    [Fact]
    public void Whoever_the_stamp_names_takes_the_duty() => Spec.Given().When(new TakeDuty(s_at, "kea", "six-monthly"))
        .Then(("boat/kea", new DutyTaken(s_kept, "kea", null, "six-monthly")))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void A_boat_goes_out_of_hire_and_back_for_a_reason()
    {
        Spec.Given().When(new TakeOutOfHire(s_at, "kea", "service")).Then(("boat/kea", new TakenOutOfHire(s_kept, "kea", OutOfHireReason.Service)));
        Spec.Given().When(new ReturnToHire(s_at, "kea", "looked_at_dock")).Then(("boat/kea", new ReturnedToHire(s_kept, "kea", BackInHireReason.LookedAtDock)));
        Spec.Given().When(new TakeOutOfHire(s_at, "kea", null)).ThenRefuses("/why", "missing");
        Spec.Given().When(new ReturnToHire(s_at, "kea", "because")).ThenRefuses("/why", "unknown_word");
    }

    [Fact]
    public void A_boat_is_laid_up_relaunched_and_at_last_retired()
    {
        Spec.Given().When(new LayUp(s_at, "kea", "2026-09-30")).Then(("boat/kea", new LaidUp(s_kept, "kea", new DateOnly(2026, 9, 30)))).Naming(("/boat", "boat/kea"));
        Spec.Given().When(new RelaunchBoat(s_at, "kea")).Then(("boat/kea", new BoatRelaunched(s_kept, "kea"))).Naming(("/boat", "boat/kea"));
        Spec.Given().When(new RetireBoat(s_at, "kea", "lost")).Then(("boat/kea", new BoatRetired(s_kept, "kea", BoatRetirement.Lost))).Naming(("/boat", "boat/kea"));
    }

    [Fact]
    public void No_boat_goes_out_again_before_it_was_laid_up() => Spec.EachIsRefused(
        (new LayUp(s_at, "kea", "2026-05-04"), "/relaunchOn", "before_the_record"),
        (new LayUp(s_at, "kea", "spring"), "/relaunchOn", "not_a_date"));

    [Fact]
    public void An_inspection_says_what_it_saw_each_part_once()
    {
        var look = Dock.Look("2026-05-05T08:00") with { Seen = ["shaft", "gear_oil", "shaft"] };
        var kept = Assert.IsType<Inspected>(Fleet.Accepted(look).Single().Fact);
        Assert.Equal([InspectedPart.Shaft, InspectedPart.GearOil], kept.Seen);
        Assert.Null(Assert.IsType<Inspected>(Fleet.Accepted(look with { Seen = null }).Single().Fact).Seen);
        Spec.Given().When(look with { Seen = ["keel"] }).ThenRefuses("/seen/0", "unknown_word");
    }
}
