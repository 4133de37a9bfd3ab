using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Engines;

public class Hanging_and_reading_an_engine
{
    private static readonly FitEngine Hung = new(Dock.At("2026-01-05T08:00", "hang"), "kea", "port", "e1", 412.5);
    private static readonly ReadHours Read = new(Dock.At("2026-01-05T08:00", "read"), "e1", 412.5);

    [Fact]
    public void Hanging_is_kept_on_the_boat_with_a_notice_on_the_engine() => Spec.Given().When(Hung)
        .Then(
            ("boat/kea", new EngineFitted(Dock.Kept(Hung.Entry!), "kea", Position.Port, "e1", 412.5)),
            ("engine/e1", new EngineInstalled(Dock.Kept(Hung.Entry!), "e1", "kea", Position.Port)))
        .Naming(("/boat", "boat/kea"), ("/engine", "engine/e1"));

    [Fact]
    public void Hanging_needs_boat_place_and_engine_but_not_hours()
    {
        Spec.Given().When(Hung with { Hours = null }).Naming(("/boat", "boat/kea"), ("/engine", "engine/e1"));
        Spec.EachIsRefused(
            (Hung with { Boat = null }, "/boat", "missing"),
            (Hung with { Position = null }, "/position", "missing"),
            (Hung with { Position = "larboard" }, "/position", "unknown_word"),
            (Hung with { Engine = "" }, "/engine", "missing"),
            (Hung with { Hours = -0.1 }, "/hours", "out_of_range"),
            (Hung with { Hours = double.NaN }, "/hours", "out_of_range"),
            (Hung with { Hours = 100_000 }, "/hours", "out_of_range"));
    }

    [Fact]
    public void A_reading_is_kept_on_the_engine() => Spec.Given().When(Read)
        .Then(("engine/e1", new HoursRead(Dock.Kept(Read.Entry!), "e1", 412.5)))
        .Naming(("/engine", "engine/e1"));

    [Fact]
    public void A_reading_needs_its_number() => Spec.EachIsRefused(
        (Read with { Engine = null }, "/engine", "missing"),
        (Read with { Hours = null }, "/hours", "missing"),
        (Read with { Hours = -1 }, "/hours", "out_of_range"),
        (Read with { Hours = double.NegativeInfinity }, "/hours", "out_of_range"),
        (Read with { Hours = 99_999.1 }, "/hours", "out_of_range"));

    [Fact]
    public void A_reading_that_contradicts_another_is_kept_and_asked_about()
    {
        var back = Dock.Hours("2026-01-06T08:00", 400);
        Spec.Given(Dock.Boat(), Dock.Engine(), Dock.Fitted(hours: 500)).When(back)
            .Then(("engine/e1", new HoursRead(Dock.Kept(back.Entry!), "e1", 400)))
            .ThenAsks("kea", ContradictionKind.HoursOutOfLine);
    }
}
