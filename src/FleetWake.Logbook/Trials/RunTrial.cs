using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Propulsion;

namespace FleetWake.Logbook.Trials;

/// <summary>Records a sea trial.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Throttle">Wide open, or part throttle on plane.</param>
/// <param name="Runs">The runs, in their order, 1 to 12.</param>
/// <param name="Meters">Hour meters read with the trial.</param>
/// <param name="People">People aboard.</param>
/// <param name="LoadKilograms">Load beside people and fuel [kg].</param>
/// <param name="FuelPercent">Fuel level [%].</param>
/// <param name="AirTemperatureCelsius">Air temperature [deg C].</param>
/// <param name="PressureHectopascals">Station air pressure [hPa].</param>
/// <param name="HumidityPercent">Relative humidity [%].</param>
/// <param name="WindKnots">Wind speed [kn].</param>
/// <param name="WaveHeightMetres">Height of waves [m].</param>
/// <param name="TrimDegrees">Trim of the engine as its gauge shows it [degrees]; out is positive.</param>
/// <param name="WaterDepthMetres">Depth of water under the runs [m].</param>
public sealed record RunTrial(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Throttle))] string? Throttle,
    IReadOnlyList<TrialRunSent>? Runs,
    IReadOnlyList<MeterSent>? Meters = null,
    int? People = null,
    double? LoadKilograms = null,
    double? FuelPercent = null,
    double? AirTemperatureCelsius = null,
    double? PressureHectopascals = null,
    double? HumidityPercent = null,
    double? WindKnots = null,
    double? WaveHeightMetres = null,
    double? TrimDegrees = null,
    double? WaterDepthMetres = null) : ICommand<RunTrial>
{
    /// <inheritdoc/>
    public static string Kind => "trial_run";

    /// <inheritdoc/>
    public static RunTrial Example => new(
        Examples.At(12, "2026-05-05T09:30:00"),
        Examples.Boat,
        "wide_open",
        [
            new TrialRunSent(25.1, "kn", 90, [new TachometerSent("single", 5650)], 30),
            new TrialRunSent(27, "kn", 270, [new TachometerSent("single", 5640)], 30),
        ],
        [new MeterSent("single", 224)],
        People: 2,
        AirTemperatureCelsius: 22,
        PressureHectopascals: 1009,
        HumidityPercent: 60,
        TrimDegrees: 3,
        WaterDepthMetres: 12);

    /// <inheritdoc/>
    public static string Summary => "Records a sea trial: runs with speed, heading and RPM, hour meters and conditions.";

    /// <inheritdoc/>
    public static Decision Decide(RunTrial command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var throttle = check.OneOf<Throttle>(command.Throttle, "/throttle");
        var runs = check.List(command.Runs, "/runs", 1, 12).Select((run, i) => Read(check, run, $"/runs/{i}")).ToList();
        var meters = check.List(command.Meters, "/meters", 0, 4).Select((meter, i) => Read(check, meter, $"/meters/{i}")).ToList();
        check.Once((command.Meters ?? []).Select(m => m?.Position), "/meters", "read each position's meter once");
        var fact = new TrialRun(
            entry!,
            boat,
            throttle,
            runs,
            meters,
            command.People is null ? null : check.Whole(command.People, "/people", 0, 100, "people"),
            check.Maybe(command.LoadKilograms, "/loadKilograms", 0, 20_000, "kg"),
            check.Maybe(command.FuelPercent, "/fuelPercent", 0, 100, "%"),
            check.Maybe(command.AirTemperatureCelsius, "/airTemperatureCelsius", -40, 55, "deg C"),
            check.Maybe(command.PressureHectopascals, "/pressureHectopascals", 500, 1090, "hPa"),
            check.Maybe(command.HumidityPercent, "/humidityPercent", 0, 100, "%"),
            check.Maybe(command.WindKnots, "/windKnots", 0, 80, "kn"),
            check.Maybe(command.WaveHeightMetres, "/waveHeightMetres", 0, 10, "m"))
        {
            TrimDegrees = check.Maybe(command.TrimDegrees, "/trimDegrees", -30, 90, "degrees"),
            WaterDepthMetres = check.Maybe(command.WaterDepthMetres, "/waterDepthMetres", 0.1, 12_000, "m"),
        };
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), fact)],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }

    private static Run Read(Check check, TrialRunSent? run, string field)
    {
        if (run is null)
        {
            check.Refuse(field, "missing", "missing: a run stands empty");
            return new Run(0, default, 0, null, []);
        }

        var speed = check.Number(run.Speed, field + "/speed", 0, 250, run.SpeedUnit ?? "a unit of speed");
        var unit = check.OneOf<SpeedUnit>(run.SpeedUnit, field + "/speedUnit");
        if (Words.TryRead<SpeedUnit>(run.SpeedUnit ?? "", out _) && In(speed, unit).Knots > 120)
            check.Refuse(field + "/speed", "out_of_range", $"{speed} {Words.Of(unit)} is faster than any hire boat: check the number and its unit");
        var heading = check.Number(run.HeadingDegrees, field + "/headingDegrees", 0, 360, "degrees");
        var seconds = check.Maybe(run.Seconds, field + "/seconds", 1, 3600, "s");
        var tachometers = check.List(run.Tachometers, field + "/tachometers", 1, 4)
            .Select((t, i) => Read(check, t, $"{field}/tachometers/{i}")).ToList();
        check.Once((run.Tachometers ?? []).Select(t => t?.Position), field + "/tachometers", "read each position's tachometer once a run");
        return new Run(speed, unit, heading, seconds, tachometers);
    }

    private static TachometerReading Read(Check check, TachometerSent? reading, string field) => new(
        check.OneOf<Position>(reading?.Position, field + "/position"),
        check.Number(reading?.Rpm, field + "/rpm", CredibleRpm.Least, CredibleRpm.Most, "RPM"),
        reading?.LimiterReached ?? false)
    {
        Ventilated = reading?.Ventilated,
    };

    private static MeterReading Read(Check check, MeterSent? meter, string field) => new(
        check.OneOf<Position>(meter?.Position, field + "/position"),
        check.Number(meter?.Hours, field + "/hours", 0, CheckHours.Most, "h"));

    /// <summary>A speed as read, as a quantity.</summary>
    public static Speed In(double speed, SpeedUnit unit) => unit switch
    {
        SpeedUnit.Kn => Speed.FromKnots(speed),
        SpeedUnit.Mph => Speed.FromMilesPerHour(speed),
        SpeedUnit.KmPerH => Speed.FromKilometresPerHour(speed),
        _ => Speed.FromMetresPerSecond(speed),
    };
}

/// <summary>One run as sent.</summary>
/// <param name="Speed">Speed over ground, in the unit given.</param>
/// <param name="SpeedUnit">Unit of the speed.</param>
/// <param name="HeadingDegrees">Heading [degrees].</param>
/// <param name="Tachometers">RPM of each engine.</param>
/// <param name="Seconds">How long the readings were held [s].</param>
public sealed record TrialRunSent(
    double? Speed,
    [property: OneOf(typeof(SpeedUnit))] string? SpeedUnit,
    double? HeadingDegrees,
    IReadOnlyList<TachometerSent>? Tachometers,
    double? Seconds = null);

/// <summary>One engine's tachometer as sent.</summary>
/// <param name="Position">The position.</param>
/// <param name="Rpm">Engine speed as read [RPM].</param>
/// <param name="LimiterReached">The limiter held the engine.</param>
/// <param name="Ventilated">The prop drew air: a burst of RPM without speed.</param>
public sealed record TachometerSent([property: OneOf(typeof(Position))] string? Position, double? Rpm, bool? LimiterReached = null, bool? Ventilated = null);

/// <summary>An hour meter as sent.</summary>
/// <param name="Position">The position.</param>
/// <param name="Hours">What the meter showed [h].</param>
public sealed record MeterSent([property: OneOf(typeof(Position))] string? Position, double? Hours);
