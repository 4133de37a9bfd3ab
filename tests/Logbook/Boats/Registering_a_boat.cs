using FleetWake.Logbook.Boats;

namespace FleetWake.Logbook.Tests.Boats;

public class Registering_a_boat
{
    private static readonly RegisterBoat Good = new(Dock.At("2026-01-05T08:00", "kea"), "kea", " Kea ", "jetty", "Pacific/Auckland", "salt", ["port", "starboard"]);

    [Fact]
    public void It_is_kept_on_the_boats_stream_and_refers_to_nothing() => Spec.Given().When(Good)
        .Then(("boat/kea", new BoatRegistered(Dock.Kept(Good.Entry!), "kea", "Kea", "jetty", "Pacific/Auckland", WaterType.Salt, [Position.Port, Position.Starboard])))
        .Naming();

    [Fact]
    public void Each_field_is_needed() => Spec.EachIsRefused(
        (Good with { Entry = null }, "/entry", "missing"),
        (Good with { Boat = null }, "/boat", "missing"),
        (Good with { Boat = " " }, "/boat", "missing"),
        (Good with { Name = "  " }, "/name", "missing"),
        (Good with { Dock = null }, "/dock", "missing"),
        (Good with { DockZone = null }, "/dockZone", "missing"),
        (Good with { Water = null }, "/water", "missing"),
        (Good with { Positions = null }, "/positions", "too_few"),
        (Good with { Positions = [] }, "/positions", "too_few"));

    [Fact]
    public void Words_that_the_trade_does_not_have_are_refused_once_where_they_stand() => Spec.EachIsRefused(
        (Good with { Water = "Salt" }, "/water", "unknown_word"),
        (Good with { Water = "1" }, "/water", "unknown_word"),
        (Good with { Positions = ["port", "larboard"] }, "/positions/1", "unknown_word"),
        (Good with { Positions = ["port", ""] }, "/positions/1", "unknown_word"));

    [Fact]
    public void Two_unknown_words_are_two_refusals_and_no_third() =>
        Spec.Given().When(Good with { Positions = ["left", "right"] })
            .ThenRefuses(("/positions/0", "unknown_word"), ("/positions/1", "unknown_word"));

    [Fact]
    public void Positions_that_cannot_be_on_one_transom_are_refused() => Spec.EachIsRefused(
        (Good with { Positions = ["port", "port"] }, "/positions", "named_twice"),
        (Good with { Positions = ["single", "port"] }, "/positions", "single_of_several"),
        (Good with { Positions = ["port", "starboard", "centre", "port", "centre"] }, "/positions", "too_many"));

    [Theory]
    [InlineData("kea two")]
    [InlineData("-kea")]
    [InlineData("kea/2")]
    [InlineData("kea\n")]
    [InlineData("kéa")]
    [InlineData("12345678901234567890123456789012345678901")]
    public void An_id_is_plain(string id) => Spec.Given().When(Good with { Boat = id }).ThenRefuses("/boat", "not_an_id");

    [Theory]
    [InlineData("two\nlines")]
    [InlineData("two\u2028lines")]
    [InlineData("a name of more than eighty characters, which no transom has ever had painted on it")]
    public void A_name_is_one_line(string name) => Spec.Given().When(Good with { Name = name }).ThenRefuses("/name", "not_a_name");

    [Fact]
    public void All_that_is_wrong_is_said_at_once() =>
        Spec.Given().When(new RegisterBoat(null, null, null, null, null, null, null)).ThenRefuses(
            ("/entry", "missing"), ("/boat", "missing"), ("/name", "missing"), ("/dock", "missing"),
            ("/dockZone", "missing"), ("/water", "missing"), ("/positions", "too_few"));
}
