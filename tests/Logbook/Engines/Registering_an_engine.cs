using FleetWake.Logbook.Engines;

namespace FleetWake.Logbook.Tests.Engines;

public class Registering_an_engine
{
    private static readonly RegisterEngine Good =
        new(Dock.At("2026-01-05T08:00", "e1"), "e1", "Four-stroke 50", 5000, 6000, 2.08, 50, "hp", 25, "pound_force_foot", 100);

    [Fact]
    public void It_is_kept_on_the_engines_stream_with_its_units() => Spec.Given().When(Good)
        .Then(("engine/e1", new EngineRegistered(
            Dock.Kept(Good.Entry!), "e1", "Four-stroke 50", 50, PowerUnit.Hp, 5000, 6000, 2.08, 25, TorqueUnit.PoundForceFoot, 100)))
        .Naming();

    [Fact]
    public void A_blank_torque_stays_blank_and_means_see_the_manual() =>
        Spec.Given().When(Good with { NutTorque = null, NutTorqueUnit = null, RatedPower = null, RatedPowerUnit = null, TachometerStepRpm = null })
            .Then(("engine/e1", new EngineRegistered(
                Dock.Kept(Good.Entry!), "e1", "Four-stroke 50", null, null, 5000, 6000, 2.08, null, null, null)));

    [Fact]
    public void No_band_or_gear_ratio_is_made_up() => Spec.EachIsRefused(
        (Good with { Engine = null }, "/engine", "missing"),
        (Good with { Model = null }, "/model", "missing"),
        (Good with { BandLowRpm = null }, "/bandLowRpm", "missing"),
        (Good with { BandHighRpm = null }, "/bandHighRpm", "missing"),
        (Good with { GearRatio = null }, "/gearRatio", "missing"));

    [Fact]
    public void Numbers_that_no_engine_has_are_refused() => Spec.EachIsRefused(
        (Good with { BandLowRpm = 999 }, "/bandLowRpm", "out_of_range"),
        (Good with { BandLowRpm = double.NaN }, "/bandLowRpm", "out_of_range"),
        (Good with { BandHighRpm = 12001 }, "/bandHighRpm", "out_of_range"),
        (Good with { BandHighRpm = double.PositiveInfinity }, "/bandHighRpm", "out_of_range"),
        (Good with { BandLowRpm = 6000, BandHighRpm = 5000 }, "/bandHighRpm", "band_upside_down"),
        (Good with { BandLowRpm = 6000 }, "/bandHighRpm", "band_upside_down"),
        (Good with { GearRatio = 0 }, "/gearRatio", "out_of_range"),
        (Good with { GearRatio = 5.1 }, "/gearRatio", "out_of_range"),
        (Good with { RatedPower = 0.4 }, "/ratedPower", "out_of_range"),
        (Good with { RatedPower = 2001 }, "/ratedPower", "out_of_range"),
        (Good with { NutTorque = -3 }, "/nutTorque", "out_of_range"),
        (Good with { TachometerStepRpm = 0 }, "/tachometerStepRpm", "out_of_range"),
        (Good with { TachometerStepRpm = 501 }, "/tachometerStepRpm", "out_of_range"));

    [Fact]
    public void A_number_and_its_unit_come_together() => Spec.EachIsRefused(
        (Good with { RatedPowerUnit = null }, "/ratedPowerUnit", "missing"),
        (Good with { RatedPower = null }, "/ratedPower", "missing"),
        (Good with { RatedPowerUnit = "ps" }, "/ratedPowerUnit", "unknown_word"),
        (Good with { NutTorqueUnit = null }, "/nutTorqueUnit", "missing"),
        (Good with { NutTorque = null }, "/nutTorque", "missing"),
        (Good with { NutTorqueUnit = "furlong" }, "/nutTorqueUnit", "unknown_word"));

    [Fact]
    public void A_torque_is_judged_in_its_own_unit()
    {
        Spec.Given().When(Good with { NutTorque = 295 }).Naming();
        Spec.Given().When(Good with { NutTorque = 400, NutTorqueUnit = "newton_metre" }).Naming();
        Spec.EachIsRefused(
            (Good with { NutTorque = 296 }, "/nutTorque", "out_of_range"),
            (Good with { NutTorque = 401, NutTorqueUnit = "newton_metre" }, "/nutTorque", "out_of_range"));
    }
}
