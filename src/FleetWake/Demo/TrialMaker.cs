using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;

namespace FleetWake.Demo;

/// <summary>What was aboard on a trial and how it was run.</summary>
/// <param name="People">People aboard.</param>
/// <param name="Load">Load beside people and fuel [kg].</param>
/// <param name="MetersRead">The hour meters were read.</param>
/// <param name="Habit">Scatter of RPM from one trial to the next by trim and habit, as a share; none when one crew always trims alike.</param>
internal sealed record Aboard(int People = 2, double Load = 0, bool MetersRead = true, double Habit = 0);

/// <summary>
/// Makes sea trials: two opposite runs with a current, read off a stepped tachometer.
/// Crews wait for a settled morning, so the air differs by a few degrees and hectopascals only.
/// </summary>
internal static class TrialMaker
{
    private const double PersonKilograms = 80;

    // Much like reference air, so that what is read and what it comes to there lie close together.
    private const double UsualCelsius = 24;
    private const double UsualHectopascals = 1009;

    // A tenth more weight costs about 37 RPM of 5,500 and twice that share of speed.
    private const double RpmPerDisplacement = -0.067;
    private const double SpeedPerDisplacement = 2 * RpmPerDisplacement;

    // A per cent more power is about 0.4 per cent more RPM, and hardly more speed than that.
    private const double RpmPerPower = 0.39;
    private const double SpeedPerRpm = 1.15;

    /// <summary>The trial's record without its stamp's checks.</summary>
    public static RunTrial Make(Stamp stamp, Notebook log, Life life, DateTimeOffset at, Aboard aboard)
    {
        var dice = new Dice($"{life.Boat.Id} trial {DockCalendar.Text(at)}");
        var air = Math.Round(UsualCelsius + dice.Scatter(2), 1);
        var pressure = Math.Round(UsualHectopascals + dice.Scatter(3), 1);
        var humidity = dice.Whole(55, 85);
        var better = RpmPerPower * PowerGained(air, pressure, humidity) + dice.Scatter(aboard.Habit);
        var engines = life.Boat.Positions.Select(p => Engine(log, life, p, at, aboard, better)).ToList();
        var current = dice.Between(-1, 1) * life.Boat.Dock.CurrentKnots;
        var heading = dice.Whole(0, 17) * 10;
        return new RunTrial(
            stamp,
            life.Boat.Id,
            "wide_open",
            [Run(life.Boat, engines, heading, current, dice), Run(life.Boat, engines, heading + 180, -current, dice)],
            aboard.MetersRead ? [.. life.Boat.Positions.Select(p => new MeterSent(p, log.Meter(life.Boat, p, at)))] : null,
            aboard.People,
            aboard.Load,
            dice.Whole(6, 19) * 5,
            air,
            pressure,
            humidity,
            dice.Whole(2, 11),
            Math.Round(dice.Between(0, 0.4), 1));
    }

    private static TrueEngine Engine(Notebook log, Life life, string position, DateTimeOffset at, Aboard aboard, double better)
    {
        var day = DateOnly.FromDateTime(at.DateTime);
        var prop = life.On(position, day);
        var hours = log.Ran(life.Boat, position, at) - log.Ran(life.Boat, position, DockCalendar.At(prop.From, 8, 0));
        var (rpm, knots) = prop.Going.After(hours, day);
        var heavier = ((aboard.People - 2) * PersonKilograms + aboard.Load) / life.Boat.Model.Displacement;
        return new TrueEngine(
            position,
            rpm * (1 + RpmPerDisplacement * heavier + better),
            knots * (1 + SpeedPerDisplacement * heavier + SpeedPerRpm * better));
    }

    private static TrialRunSent Run(BoatLine boat, List<TrueEngine> engines, double heading, double current, Dice dice)
    {
        var knots = engines.Average(e => e.Knots) * (1 + dice.Scatter(0.006)) + current;
        return new TrialRunSent(
            Math.Round(Shown(knots, boat.Dock.SpeedUnit), 1),
            boat.Dock.SpeedUnit,
            heading,
            [.. engines.Select(e => new TachometerSent(e.Position, Stepped(e.Rpm * (1 + dice.Scatter(0.0012)), boat.TachometerStep)))],
            dice.Whole(3, 6) * 10);
    }

    /// <summary>What a tachometer with this step shows.</summary>
    public static double Stepped(double rpm, double step) => Math.Round(rpm / step) * step;

    private static double Shown(double knots, string unit) => unit switch
    {
        "mph" => knots * 1852 / 1609.344,
        "km_per_h" => knots * 1.852,
        _ => knots,
    };

    /// <summary>What air of this density gives over reference air, as a share of power.</summary>
    private static double PowerGained(double celsius, double hectopascals, double humidityPercent) =>
        1 / PowerCorrections.Of(new AirState(Temperature.FromCelsius(celsius), Pressure.FromHectopascals(hectopascals), humidityPercent / 100)).Factor.Value - 1;

    private sealed record TrueEngine(string Position, double Rpm, double Knots);
}
