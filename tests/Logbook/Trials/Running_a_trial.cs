using FleetWake.Logbook.Trials;

namespace FleetWake.Logbook.Tests.Trials;

public class Running_a_trial
{
    private static readonly TrialRunSent Out = new(22.5, "kn", 350, [new TachometerSent("port", 5500), new TachometerSent("starboard", 5480, true)], 30);
    private static readonly TrialRunSent Back = Out with { HeadingDegrees = 170, Seconds = null };

    private static readonly RunTrial Good = new(
        Dock.At("2026-01-05T08:00", "trial"), "kea", "wide_open", [Out, Back], [new MeterSent("port", 120)], 2, 150, 50, 18, 1013, 70, 8, 0.3);

    [Fact]
    public void It_is_kept_on_the_boats_stream_as_read()
    {
        TachometerReading[] gauges = [new(Position.Port, 5500, false), new(Position.Starboard, 5480, true)];
        Spec.Given().When(Good)
            .Then(("boat/kea", new TrialRun(
                Dock.Kept(Good.Entry!), "kea", Throttle.WideOpen,
                [new Run(22.5, SpeedUnit.Kn, 350, 30, gauges), new Run(22.5, SpeedUnit.Kn, 170, null, gauges)],
                [new MeterReading(Position.Port, 120)],
                2, 150, 50, 18, 1013, 70, 8, 0.3)))
            .Naming(("/boat", "boat/kea"));
    }

    [Fact]
    public void It_needs_boat_throttle_and_runs() => Spec.EachIsRefused(
        (Good with { Boat = null }, "/boat", "missing"),
        (Good with { Throttle = null }, "/throttle", "missing"),
        (Good with { Throttle = "half" }, "/throttle", "unknown_word"),
        (Good with { Runs = null }, "/runs", "too_few"),
        (Good with { Runs = [] }, "/runs", "too_few"),
        (Good with { Runs = [.. Enumerable.Repeat(Out, 13)] }, "/runs", "too_many"));

    [Fact]
    public void A_run_is_refused_where_it_is_wrong() => Spec.EachIsRefused(
        (With(Out with { Speed = null }), "/runs/1/speed", "missing"),
        (With(Out with { Speed = -1 }), "/runs/1/speed", "out_of_range"),
        (With(Out with { Speed = double.NaN }), "/runs/1/speed", "out_of_range"),
        (With(Out with { Speed = 121 }), "/runs/1/speed", "out_of_range"),
        (With(Out with { Speed = 62, SpeedUnit = "m_per_s" }), "/runs/1/speed", "out_of_range"),
        (With(Out with { SpeedUnit = null }), "/runs/1/speedUnit", "missing"),
        (With(Out with { SpeedUnit = "furlong" }), "/runs/1/speedUnit", "unknown_word"),
        (With(Out with { Speed = 130, SpeedUnit = "furlong" }), "/runs/1/speedUnit", "unknown_word"),
        (With(Out with { HeadingDegrees = null }), "/runs/1/headingDegrees", "missing"),
        (With(Out with { HeadingDegrees = 361 }), "/runs/1/headingDegrees", "out_of_range"),
        (With(Out with { Seconds = 0 }), "/runs/1/seconds", "out_of_range"),
        (With(Out with { Tachometers = null }), "/runs/1/tachometers", "too_few"));

    [Fact]
    public void A_gauge_is_refused_where_it_is_wrong() => Spec.EachIsRefused(
        (With(Gauges(new TachometerSent("port", null))), "/runs/1/tachometers/0/rpm", "missing"),
        (With(Gauges(new TachometerSent("port", 55))), "/runs/1/tachometers/0/rpm", "out_of_range"), // hundreds, as the dial is marked
        (With(Gauges(new TachometerSent("port", 12001))), "/runs/1/tachometers/0/rpm", "out_of_range"),
        (With(Gauges(new TachometerSent(null, 5500))), "/runs/1/tachometers/0/position", "missing"),
        (With(Gauges(new TachometerSent("port", 5500), new TachometerSent("port", 5510))), "/runs/1/tachometers", "named_twice"));

    [Fact]
    public void Two_gauges_without_a_place_are_not_called_the_same_place() =>
        Spec.Given().When(With(Gauges(new TachometerSent("left", 5500), new TachometerSent("right", 5500))))
            .ThenRefuses(("/runs/1/tachometers/0/position", "unknown_word"), ("/runs/1/tachometers/1/position", "unknown_word"));

    [Fact]
    public void Empty_places_in_a_list_are_refused() =>
        Spec.Given().When(Good with { Runs = [null!], Meters = [null!] })
            .ThenRefuses(("/runs/0", "missing"), ("/meters/0/position", "missing"), ("/meters/0/hours", "missing"));

    [Fact]
    public void A_meter_is_read_once_for_each_place() => Spec.EachIsRefused(
        (Good with { Meters = [new MeterSent("port", 1), new MeterSent("port", 2)] }, "/meters", "named_twice"),
        (Good with { Meters = [new MeterSent("port", -1)] }, "/meters/0/hours", "out_of_range"));

    [Fact]
    public void Conditions_that_no_trial_has_are_refused() => Spec.EachIsRefused(
        (Good with { People = -1 }, "/people", "out_of_range"),
        (Good with { LoadKilograms = 20_001 }, "/loadKilograms", "out_of_range"),
        (Good with { FuelPercent = 101 }, "/fuelPercent", "out_of_range"),
        (Good with { AirTemperatureCelsius = 68 }, "/airTemperatureCelsius", "out_of_range"), // Fahrenheit
        (Good with { PressureHectopascals = 29.9 }, "/pressureHectopascals", "out_of_range"), // inches of mercury
        (Good with { HumidityPercent = double.NaN }, "/humidityPercent", "out_of_range"),
        (Good with { WindKnots = 81 }, "/windKnots", "out_of_range"),
        (Good with { WaveHeightMetres = 11 }, "/waveHeightMetres", "out_of_range"));

    private static RunTrial With(TrialRunSent second) => Good with { Runs = [Out, second] };

    private static TrialRunSent Gauges(params TachometerSent[] gauges) => Out with { Tachometers = gauges };
}
