using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Props;

namespace FleetWake.Logbook.Tests.Engines;

public class What_holds_and_fits
{
    private static readonly StateFastening Castle = new(Dock.At("2026-01-05T08:00", "fastening"), "e1", "castle_nut_cotter_pin", 25, 30, "pound_force_foot", 2, true);
    private static readonly StateEngineFit Fit = new(Dock.At("2026-01-05T08:00", "fit"), "e1", "spline-a", 13, "hub-21", "washer-4", "left", 14.1);
    private static readonly ServiceEngine Service = new(Dock.At("2026-01-05T08:00", "service"), "e1", ["gear_oil", "plugs"], 140.5);

    [Fact]
    public void Each_is_kept_on_the_engines_stream()
    {
        Kept(Castle, new FasteningStated(Dock.Kept(Castle.Entry!), "e1", Fastening.CastleNutCotterPin, 25, 30, TorqueUnit.PoundForceFoot, 2, true));
        Kept(Fit, new EngineFitStated(Dock.Kept(Fit.Entry!), "e1", "spline-a", 13, "hub-21", "washer-4", Rotation.Left, 14.1));
        Kept(Service, new EngineServiced(Dock.Kept(Service.Entry!), "e1", [ServiceWork.GearOil, ServiceWork.Plugs], 140.5));
    }

    [Fact]
    public void A_torque_left_blank_means_see_the_manual() => Kept(
        new StateFastening(Castle.Entry, "e1", "lock_nut"), new FasteningStated(Dock.Kept(Castle.Entry!), "e1", Fastening.LockNut, null, null, null, null, null));

    [Fact]
    public void A_manual_may_give_one_torque() => Kept(
        Castle with { TorqueHigh = null }, new FasteningStated(Dock.Kept(Castle.Entry!), "e1", Fastening.CastleNutCotterPin, 25, null, TorqueUnit.PoundForceFoot, 2, true));

    [Fact]
    public void A_torque_is_a_range_the_right_way_up_with_its_unit() => Spec.EachIsRefused(
        (Castle with { TorqueLow = null }, "/torqueLow", "missing"),
        (Castle with { TorqueLow = null, TorqueHigh = null }, "/torqueLow", "missing"),
        (Castle with { TorqueUnit = null }, "/torqueUnit", "missing"),
        (Castle with { TorqueUnit = "furlong" }, "/torqueUnit", "unknown_word"),
        (Castle with { TorqueHigh = 24 }, "/torqueHigh", "range_upside_down"),
        (Castle with { TorqueHigh = 300 }, "/torqueHigh", "out_of_range"),
        (Castle with { TorqueLow = 0 }, "/torqueLow", "out_of_range"));

    [Fact]
    public void Only_a_castle_nut_has_slots() => Spec.EachIsRefused(
        (Castle with { Fastening = "tab_washer" }, "/mostSlots", "no_slots"),
        (Castle with { MostSlots = 11 }, "/mostSlots", "out_of_range"),
        (Castle with { Fastening = "string" }, "/fastening", "unknown_word"),
        (Castle with { Engine = null }, "/engine", "missing"));

    [Fact]
    public void A_fit_states_something_that_can_be() => Spec.EachIsRefused(
        (new StateEngineFit(Fit.Entry, "e1"), "/splineTeeth", "says_nothing"),
        (Fit with { SplineTeeth = 61 }, "/splineTeeth", "out_of_range"),
        (Fit with { Rotation = "both" }, "/rotation", "unknown_word"),
        (Fit with { LargestDiameterInches = 360 }, "/largestDiameterInches", "out_of_range"),
        (Fit with { ThrustWasher = "?" }, "/thrustWasher", "not_an_id"));

    [Fact]
    public void A_service_says_what_was_done_once_each() => Spec.EachIsRefused(
        (Service with { Work = [] }, "/work", "too_few"),
        (Service with { Work = ["gear_oil", "gear_oil"] }, "/work", "named_twice"),
        (Service with { Work = ["wash"] }, "/work/0", "unknown_word"),
        (Service with { Hours = -1 }, "/hours", "out_of_range"));

    [Fact]
    public void Hours_read_at_a_service_count() =>
        Assert.Equal(140.5, Dock.OneBoat().With(Service with { Entry = Dock.At("2026-02-05T08:00", "service") }).History().Meters["e1"].Readings[^1].Hours);

    private static void Kept<T>(T command, IFact fact)
        where T : ICommand<T> =>
        Spec.Given().When(command).Then(("engine/e1", fact)).Naming(("/engine", "engine/e1"));
}
