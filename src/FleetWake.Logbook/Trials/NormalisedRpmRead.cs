using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Trials;

/// <summary>
/// A wide-open-throttle RPM that somebody else has already brought to reference conditions, as they wrote it down. What
/// was read at the helm is not known, so it is never corrected again, and it has no speed and no slip.
/// </summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Rpm">Engine speed at reference conditions [RPM].</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
/// <param name="AirTemperatureCelsius">Air temperature of the trial behind it [deg C], when told.</param>
/// <param name="LoadDeltaKilograms">Load of the trial behind it less the reference load [kg], when told.</param>
[StoredAs("normalised_rpm_read", 1)]
public sealed record NormalisedRpmRead(
    Entry Entry,
    string Boat,
    Position Position,
    double Rpm,
    double? Hours,
    double? AirTemperatureCelsius,
    double? LoadDeltaKilograms) : IMetered;

/// <summary>Records a wide-open-throttle RPM that was brought to reference conditions elsewhere.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Rpm">Engine speed at reference conditions [RPM].</param>
/// <param name="Hours">Hour-meter reading [h].</param>
/// <param name="AirTemperatureCelsius">Air temperature of the trial behind it [deg C].</param>
/// <param name="LoadDeltaKilograms">Load of the trial behind it less the reference load [kg], -2000 to 2000.</param>
public sealed record ReadNormalisedRpm(
    Stamp? Entry,
    string? Boat,
    [property: OneOf(typeof(Position))] string? Position,
    double? Rpm,
    double? Hours = null,
    double? AirTemperatureCelsius = null,
    double? LoadDeltaKilograms = null) : ICommand<ReadNormalisedRpm>
{
    /// <inheritdoc/>
    public static string Kind => "normalised_rpm_read";

    /// <inheritdoc/>
    public static ReadNormalisedRpm Example => new(Examples.At(100, "2026-05-14T09:30:00"), Examples.Boat, "single", 5612, 240, 14.5, -60);

    /// <inheritdoc/>
    public static string Summary => "Records a wide-open-throttle RPM that was brought to reference conditions elsewhere; it is not corrected again.";

    /// <inheritdoc/>
    public static Decision Decide(ReadNormalisedRpm command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var boat = check.Id(command.Boat, "/boat");
        var position = check.OneOf<Position>(command.Position, "/position");
        var rpm = check.Number(command.Rpm, "/rpm", CredibleRpm.Least, CredibleRpm.Most, "RPM");
        var hours = check.Hours(command.Hours, "/hours");
        var air = check.Maybe(command.AirTemperatureCelsius, "/airTemperatureCelsius", -40, 55, "deg C");
        var load = check.Maybe(command.LoadDeltaKilograms, "/loadDeltaKilograms", -2000, 2000, "kg");
        return check.Decide(() => new Decision.Keep(
            [new Placed(StreamName.Boat(boat), new NormalisedRpmRead(entry!, boat, position, rpm, hours, air, load))],
            [new Reference("/boat", StreamName.Boat(boat))]));
    }
}
