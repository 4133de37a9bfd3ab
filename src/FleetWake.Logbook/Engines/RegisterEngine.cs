using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Engines;

/// <summary>Registers an engine with the values of its owner's manual.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Engine">The engine's id.</param>
/// <param name="Model">Model name for people.</param>
/// <param name="BandLowRpm">Lowest rated wide-open-throttle speed [RPM].</param>
/// <param name="BandHighRpm">Highest rated wide-open-throttle speed [RPM].</param>
/// <param name="GearRatio">Engine turns per prop turn.</param>
/// <param name="RatedPower">Rated power, in the unit given.</param>
/// <param name="RatedPowerUnit">Unit of the rated power.</param>
/// <param name="NutTorque">Propeller-nut torque of the manual, in the unit given.</param>
/// <param name="NutTorqueUnit">Unit of the nut torque.</param>
/// <param name="TachometerStepRpm">Smallest step the tachometer shows [RPM].</param>
/// <param name="AirIntake">How it takes its air; left out, it counts as naturally aspirated.</param>
public sealed record RegisterEngine(
    Stamp? Entry,
    string? Engine,
    string? Model,
    double? BandLowRpm,
    double? BandHighRpm,
    double? GearRatio,
    double? RatedPower = null,
    [property: OneOf(typeof(PowerUnit))] string? RatedPowerUnit = null,
    double? NutTorque = null,
    [property: OneOf(typeof(TorqueUnit))] string? NutTorqueUnit = null,
    double? TachometerStepRpm = null,
    [property: OneOf(typeof(AirIntake))] string? AirIntake = null) : ICommand<RegisterEngine>
{
    /// <inheritdoc/>
    public static string Kind => "engine_registered";

    /// <inheritdoc/>
    public static RegisterEngine Example => new(Examples.At(2, "2026-05-01T08:05:00"), Examples.Engine, "Skerry 50", 5000, 6000, 2.08, 50, "hp", 34, "newton_metre", 50, "naturally_aspirated");

    /// <inheritdoc/>
    public static string Summary => "Registers an engine: rated band, gear ratio, nut torque and tachometer, from its owner's manual.";

    /// <inheritdoc/>
    public static Decision Decide(RegisterEngine command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var engine = check.Id(command.Engine, "/engine");
        var model = check.Name(command.Model, "/model");
        var low = check.Number(command.BandLowRpm, "/bandLowRpm", 1000, 12000, "RPM");
        var high = check.Number(command.BandHighRpm, "/bandHighRpm", 1000, 12000, "RPM");
        if (command.BandLowRpm >= command.BandHighRpm)
            check.Refuse("/bandHighRpm", "band_upside_down", "the band's top must lie above its bottom");
        var gear = check.Number(command.GearRatio, "/gearRatio", 0.5, 5, "engine turns per prop turn");
        var (power, powerUnit) = check.WithUnit<PowerUnit>(command.RatedPower, command.RatedPowerUnit, "/ratedPower", 0.5, 2000);
        var (torque, torqueUnit) = check.Torque(command.NutTorque, command.NutTorqueUnit, "/nutTorque");
        var step = check.Maybe(command.TachometerStepRpm, "/tachometerStepRpm", 1, 500, "RPM");
        var air = check.MaybeOneOf<AirIntake>(command.AirIntake, "/airIntake");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Engine(engine), new EngineRegistered(entry!, engine, model, power, powerUnit, low, high, gear, torque, torqueUnit, step) { AirIntake = air })],
            []));
    }
}
