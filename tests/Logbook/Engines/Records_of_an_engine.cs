using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Engines;

public class Records_of_an_engine
{
    private static readonly Stamp s_at = Dock.At("2026-05-01T08:00", "record");
    private static readonly Entry s_kept = Dock.Kept(s_at);
    private static readonly ReplaceMeter s_meter = new(s_at, "e1", 0.2, 512.5);
    private static readonly CheckTachometer s_gauge = new(s_at, "e1", 5100, 5020);
    private static readonly RemoveEngine s_off = new(s_at, "kea", "single", "e1", 512.5);

    [Fact]
    public void A_new_hour_meter_is_kept_with_what_both_showed()
    {
        Spec.Given().When(s_meter).Then(("engine/e1", new MeterReplaced(s_kept, "e1", 512.5, 0.2))).Naming(("/engine", "engine/e1"));
        Spec.Given().When(s_meter with { OldHours = null }).Then(("engine/e1", new MeterReplaced(s_kept, "e1", null, 0.2)));
        Spec.EachIsRefused(
            (s_meter with { Engine = null }, "/engine", "missing"),
            (s_meter with { NewHours = null }, "/newHours", "missing"),
            (s_meter with { OldHours = -1 }, "/oldHours", "out_of_range"));
    }

    [Fact]
    public void A_checked_tachometer_is_kept_with_what_both_showed()
    {
        Spec.Given().When(s_gauge).Then(("engine/e1", new TachometerChecked(s_kept, "e1", 5100, 5020))).Naming(("/engine", "engine/e1"));
        Spec.EachIsRefused(
            (s_gauge with { Engine = null }, "/engine", "missing"),
            (s_gauge with { ShownRpm = 51 }, "/shownRpm", "out_of_range"),
            (s_gauge with { TrueRpm = null }, "/trueRpm", "missing"));
    }

    [Fact]
    public void An_engine_that_came_off_is_kept_on_the_boat_with_a_notice_on_the_engine() => Spec.Given().When(s_off)
        .Then(
            ("boat/kea", new EngineRemoved(s_kept, "kea", Position.Single, "e1", 512.5)),
            ("engine/e1", new EngineTakenOff(s_kept, "e1", "kea", Position.Single)))
        .Naming(("/boat", "boat/kea"), ("/engine", "engine/e1"));

    [Fact]
    public void An_engine_that_nobody_named_leaves_the_engines_stream_alone() => Spec.Given().When(s_off with { Engine = null })
        .Then(("boat/kea", new EngineRemoved(s_kept, "kea", Position.Single, null, 512.5))).Naming(("/boat", "boat/kea"));

    [Fact]
    public void An_engine_that_came_off_did_so_from_a_boat_and_a_place() => Spec.EachIsRefused(
        (s_off with { Boat = null }, "/boat", "missing"),
        (s_off with { Position = null }, "/position", "missing"),
        (s_off with { Engine = "" }, "/engine", "missing"),
        (s_off with { Hours = 1e6 }, "/hours", "out_of_range"));
}
