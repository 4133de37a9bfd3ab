using FleetWake.Logbook.Engines;
using Xunit.Sdk;

namespace FleetWake.Logbook.Tests;

public class The_kit_itself
{
    private static readonly ReadHours Good = Dock.Hours("2026-03-01T10:00", 120);

    private static readonly HoursRead Kept = new(Dock.Kept(Good.Entry!), "e1", 120);

    [Fact]
    public void What_is_kept_passes() =>
        Spec.Given().When(Good).Then(("engine/e1", Kept)).Naming(("/engine", "engine/e1"));

    [Fact]
    public void A_refusal_that_does_not_occur_fails() =>
        Fails(() => Spec.Given().When(Good).ThenRefuses("/hours", "out_of_range"));

    [Fact]
    public void A_refusal_at_another_field_or_for_another_reason_fails()
    {
        var wrong = Spec.Given().When(Good with { Hours = -1 });
        wrong.ThenRefuses("/hours", "out_of_range");
        Fails(() => wrong.ThenRefuses("/hours", "missing"));
        Fails(() => wrong.ThenRefuses("/engine", "out_of_range"));
    }

    [Fact]
    public void A_second_refusal_that_nobody_named_fails() =>
        Fails(() => Spec.Given().When(Good with { Hours = -1, Engine = null }).ThenRefuses("/hours", "out_of_range"));

    [Fact]
    public void A_wrong_fact_fails()
    {
        Fails(() => Spec.Given().When(Good).Then(("engine/e1", Kept with { Hours = 121 })));
        Fails(() => Spec.Given().When(Good).Then(("engine/e2", Kept)));
        Fails(() => Spec.Given().When(Good).Then());
        Fails(() => Spec.Given().When(Good).Naming());
    }

    [Fact]
    public void Facts_of_a_refused_record_fail() =>
        Fails(() => Spec.Given().When(Good with { Hours = null }).Then(("engine/e1", Kept)));

    [Fact]
    public void A_question_that_is_not_asked_fails()
    {
        var trial = Dock.Trial("2026-03-01T10:00", 5500);
        Spec.Given(Dock.Boat()).When(trial).ThenAsks(Dock.Kea, ContradictionKind.TrialWithoutProp);
        Fails(() => Spec.Given(Dock.Boat(), Dock.Mounted()).When(trial).ThenAsks(Dock.Kea, ContradictionKind.TrialWithoutProp));
        Fails(() => Spec.Given(Dock.Boat()).When(trial).ThenAsks(Dock.Kea));
    }

    [Fact]
    public void Without_a_command_nothing_passes()
    {
        Fails(() => Spec.Given().Then());
        Fails(() => Spec.Given().ThenRefuses("/hours", "missing"));
    }

    [Fact]
    public void A_refused_record_is_no_given() => Fails(() => Spec.Given(Good with { Hours = null }));

    private static void Fails(Action specification) => Assert.ThrowsAny<XunitException>(specification);
}
