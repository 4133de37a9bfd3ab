using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Tests.Strikes;

public class Reporting_a_strike
{
    private static readonly ReportStrike Good = new(Dock.At("2026-01-05T08:00", "strike"), "kea", "single", "rock", "chipped", 120);

    [Fact]
    public void It_is_kept_on_the_boats_stream() => Spec.Given().When(Good)
        .Then(("boat/kea", new StrikeReported(Dock.Kept(Good.Entry!), "kea", Position.Single, StruckObject.Rock, StrikeSeverity.Chipped, 120)))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void Nobody_needs_to_know_what_was_hit_or_the_hours() => Spec.Given().When(Good with { Object = "unknown", Hours = null })
        .Then(("boat/kea", new StrikeReported(Dock.Kept(Good.Entry!), "kea", Position.Single, StruckObject.Unknown, StrikeSeverity.Chipped, null)));

    [Fact]
    public void It_needs_boat_place_object_and_severity() => Spec.EachIsRefused(
        (Good with { Boat = "not a boat" }, "/boat", "not_an_id"),
        (Good with { Position = null }, "/position", "missing"),
        (Good with { Object = null }, "/object", "missing"),
        (Good with { Object = "whale" }, "/object", "unknown_word"),
        (Good with { Severity = null }, "/severity", "missing"),
        (Good with { Severity = "4" }, "/severity", "unknown_word"),
        (Good with { Hours = double.NaN }, "/hours", "out_of_range"));
}
