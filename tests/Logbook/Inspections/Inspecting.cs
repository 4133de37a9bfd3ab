using FleetWake.Logbook.Inspections;

namespace FleetWake.Logbook.Tests.Inspections;

public class Inspecting
{
    private static readonly Inspect Good =
        new(Dock.At("2026-01-05T08:00", "look"), "kea", "single", "watch", ["edge_wear", "chips", "edge_wear"], [13.1, 13, 12.9], 120);

    [Fact]
    public void It_is_kept_on_the_boats_stream_each_mark_once() => Spec.Given().When(Good)
        .Then(("boat/kea", new Inspected(
            Dock.Kept(Good.Entry!), "kea", Position.Single, [InspectionMark.EdgeWear, InspectionMark.Chips], [13.1, 13, 12.9], Verdict.Watch, 120)))
        .Naming(("/boat", "boat/kea"));

    [Fact]
    public void A_look_that_saw_nothing_is_a_look() => Spec.Given().When(new Inspect(Good.Entry, "kea", "single", "fit"))
        .Then(("boat/kea", new Inspected(Dock.Kept(Good.Entry!), "kea", Position.Single, [], [], Verdict.Fit, null)));

    [Fact]
    public void It_needs_boat_place_and_verdict_and_marks_we_know() => Spec.EachIsRefused(
        (Good with { Boat = null }, "/boat", "missing"),
        (Good with { Position = "stern" }, "/position", "unknown_word"),
        (Good with { Verdict = null }, "/verdict", "missing"),
        (Good with { Verdict = "takeoff" }, "/verdict", "unknown_word"),
        (Good with { Marks = ["chips", "rust"] }, "/marks/1", "unknown_word"),
        (Good with { Marks = [.. Enumerable.Repeat("chips", 21)] }, "/marks", "too_many"),
        (Good with { MeasuredPitchInches = [13, 1] }, "/measuredPitchInches/1", "out_of_range"),
        (Good with { MeasuredPitchInches = [double.NaN] }, "/measuredPitchInches/0", "out_of_range"),
        (Good with { MeasuredPitchInches = [.. Enumerable.Repeat(13.0, 8)] }, "/measuredPitchInches", "too_many"),
        (Good with { Hours = -5 }, "/hours", "out_of_range"));
}
