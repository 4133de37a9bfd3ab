using FleetWake.Demo;
using FleetWake.Logbook;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Trials;

namespace FleetWake.Journey.Tests.Demo;

/// <summary>One wide-open-throttle trial at one position, reckoned here without the program's own numbers.</summary>
/// <param name="On">Its date.</param>
/// <param name="Hours">Engine hours where the meter was read with it [h].</param>
/// <param name="Rpm">Mean RPM of its runs.</param>
/// <param name="Knots">Mean speed of its runs [kn].</param>
/// <param name="AtReference">RPM at reference air: times CF^0.38, CF by SAE J1349 in its form of 1990, damp by Magnus' formula.</param>
public sealed record TrialPoint(DateOnly On, double? Hours, double Rpm, double Knots, double AtReference)
{
    public static IReadOnlyList<TrialPoint> Of(InventedRecord record, string boat, Position position) =>
    [
        .. DecidedRecords.Counting<TrialRun>(record, StreamName.Boat(boat))
            .Where(t => t.Throttle == Throttle.WideOpen)
            .Select(t =>
            {
                var rpm = t.Runs.Average(r => r.Tachometers.Single(x => x.Position == position).Rpm);
                return new TrialPoint(
                    t.Entry.Date(),
                    t.Meters.SingleOrDefault(m => m.Position == position)?.Hours,
                    rpm,
                    t.Runs.Average(r => RunTrial.In(r.Speed, r.SpeedUnit).Knots),
                    rpm * Math.Pow(PowerFactor(t), 0.38));
            }),
    ];

    private static double PowerFactor(TrialRun trial)
    {
        var (celsius, hectopascals, humid) = (trial.AirTemperatureCelsius!.Value, trial.PressureHectopascals!.Value, trial.HumidityPercent!.Value / 100);
        var dry = hectopascals - (humid * 6.1094 * Math.Exp(17.625 * celsius / (celsius + 243.04)));
        return (1.180 * (990 / dry) * Math.Sqrt((celsius + 273) / 298)) - 0.18;
    }

    /// <summary>Least squares of RPM at reference air on hours: slope [RPM per hour] and value at the last trial.</summary>
    public static (double Slope, double AtLast) Line(IReadOnlyList<TrialPoint> points)
    {
        var read = points.Where(p => p.Hours is not null).ToList();
        var meanHours = read.Average(p => p.Hours!.Value);
        var meanRpm = read.Average(p => p.AtReference);
        var slope = read.Sum(p => (p.Hours!.Value - meanHours) * (p.AtReference - meanRpm)) / read.Sum(p => Math.Pow(p.Hours!.Value - meanHours, 2));
        return (slope, meanRpm + slope * (read.Max(p => p.Hours!.Value) - meanHours));
    }

    /// <summary>Slip of one prop.</summary>
    public double Slip(double pitchInches, double gear) => 1 - Knots * 1852 / 60 / (pitchInches * 0.0254 * Rpm / gear);
}
