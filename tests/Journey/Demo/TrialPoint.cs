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
public sealed record TrialPoint(DateOnly On, double? Hours, double Rpm, double Knots)
{
    public static IReadOnlyList<TrialPoint> Of(InventedRecord record, string boat, Position position) =>
    [
        .. DecidedRecords.Counting<TrialRun>(record, StreamName.Boat(boat))
            .Where(t => t.Throttle == Throttle.WideOpen)
            .Select(t => new TrialPoint(
                t.Entry.Date(),
                t.Meters.SingleOrDefault(m => m.Position == position)?.Hours,
                t.Runs.Average(r => r.Tachometers.Single(x => x.Position == position).Rpm),
                t.Runs.Average(r => RunTrial.In(r.Speed, r.SpeedUnit).Knots))),
    ];

    /// <summary>Least squares of RPM on hours: slope [RPM per hour] and value at the last trial.</summary>
    public static (double Slope, double AtLast) Line(IReadOnlyList<TrialPoint> points)
    {
        var read = points.Where(p => p.Hours is not null).ToList();
        var meanHours = read.Average(p => p.Hours!.Value);
        var meanRpm = read.Average(p => p.Rpm);
        var slope = read.Sum(p => (p.Hours!.Value - meanHours) * (p.Rpm - meanRpm)) / read.Sum(p => Math.Pow(p.Hours!.Value - meanHours, 2));
        return (slope, meanRpm + slope * (read.Max(p => p.Hours!.Value) - meanHours));
    }

    /// <summary>Slip of one prop.</summary>
    public double Slip(double pitchInches, double gear) => 1 - Knots * 1852 / 60 / (pitchInches * 0.0254 * Rpm / gear);
}
