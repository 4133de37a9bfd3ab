namespace FleetWake.Logbook.Tests.Entries;

public class Retracting
{
    private static readonly Retract Good = new(Dock.At("2026-01-05T08:00", "back"), Dock.Id("wrong"), "wrong_subject", Boat: "kea");

    [Fact]
    public void It_is_kept_on_the_stream_of_its_subject_and_holds_for_nothing()
    {
        var fact = new Retracted(Dock.Kept(Good.Entry!), Dock.Id("wrong"), RetractionReason.WrongSubject);
        Spec.Given().When(Good).Then(("boat/kea", fact)).Naming();
        Spec.Given().When(Good with { Boat = null, Engine = "e1" }).Then(("engine/e1", fact)).Naming();
        Spec.Given().When(Good with { Boat = null, Prop = "p1" }).Then(("prop/p1", fact)).Naming();
        Spec.Given().When(Good with { Boat = null, Part = "pin" }).Then(("part/pin", fact)).Naming();
        Spec.Given().When(Good with { Boat = null, Office = true }).Then(("operator", fact)).Naming();
    }

    [Fact]
    public void It_names_exactly_one_subject() => Spec.EachIsRefused(
        (Good with { Boat = null }, "/boat", "one_subject"),
        (Good with { Prop = "p1" }, "/boat", "one_subject"),
        (Good with { Office = true }, "/boat", "one_subject"),
        (Good with { Boat = null, Office = false }, "/boat", "one_subject"),
        (Good with { Engine = "e1", Prop = "p1" }, "/boat", "one_subject"));

    [Fact]
    public void It_says_what_and_why() => Spec.EachIsRefused(
        (Good with { Retracts = null }, "/retracts", "missing"),
        (Good with { Retracts = Guid.Empty }, "/retracts", "empty_id"),
        (Good with { Why = null }, "/why", "missing"),
        (Good with { Why = "mistake" }, "/why", "unknown_word"),
        (Good with { Boat = "?" }, "/boat", "not_an_id"),
        (Good with { Boat = null, Engine = "?" }, "/engine", "not_an_id"));

    [Fact]
    public void It_does_not_take_itself_back() =>
        Spec.Given().When(Good with { Retracts = Good.Entry!.Id }).ThenRefuses("/retracts", "retracts_itself");

    [Fact]
    public void It_is_not_amended_but_retracted() =>
        Spec.Given().When(Good with { Entry = Dock.At("2026-01-05T08:00", "back", amends: "other") }).ThenRefuses("/entry/amends", "cannot_amend");
}
