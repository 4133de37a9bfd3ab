using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Findings.Forecasts;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Fleet.Figures;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>All that a month's pack tells, out of a fleet's logs. Pure: the month is passed in.</summary>
/// <param name="First">Its first day.</param>
/// <param name="Last">Its last day.</param>
/// <param name="Findings">What the record said at its end.</param>
/// <param name="Fleet">The fleet's record.</param>
/// <param name="Calibrations">Forecasts of the months before, held against what came; the last month's first.</param>
/// <param name="Tables">The tables, the dictionary last.</param>
public sealed record AnalystMonth(
    DateOnly First, DateOnly Last, IReadOnlyList<BoatFinding> Findings, FleetRecord Fleet, IReadOnlyList<ForecastCalibration> Calibrations, IReadOnlyList<PackTable> Tables)
{
    /// <summary>Of how many months before forecasts are looked back at: one month's trials say little of intervals.</summary>
    public const int MonthsBack = 3;

    /// <summary>The days of which a month's pack has to know what the fleet had shown: its last, and those on which the forecasts that it looks back at were made, the latest first.</summary>
    public static IReadOnlyList<DateOnly> DaysOf(DateOnly first) => [.. Enumerable.Range(0, MonthsBack + 1).Select(back => first.AddMonths(1 - back).AddDays(-1))];

    /// <summary>The month.</summary>
    /// <param name="logs">Every log of the fleet.</param>
    /// <param name="first">First day of the month.</param>
    /// <param name="priorsOf">What the fleet had shown at the end of a day, for <see cref="DaysOf"/>: a forecast knows no later fit.</param>
    public static AnalystMonth Of(FleetLogs logs, DateOnly first, Func<DateOnly, FleetPriors> priorsOf)
    {
        var last = first.AddMonths(1).AddDays(-1);
        var dossiers = logs.Boats.Select(b => logs.DossierOf(b) with { Until = last }).ToList();
        List<BoatFinding> findings = [.. dossiers.Select(d => Assess.Boat(d, priorsOf(last))).Where(f => f.Registered is not null).OrderBy(f => f.Boat, StringComparer.Ordinal)];
        var fleet = FleetRecord.Of(dossiers.Select(BoatHistory.Tell), logs.Logs);
        var checks = DaysOf(first).Skip(1)
            .SelectMany(made => dossiers.SelectMany(d => ForecastChecks.Of(d, made, priorsOf(made))).Select(c => (Made: made, Check: c)))
            .ToList();
        List<PackTable> tables =
        [
            PackRecords.Of(logs, first, last), PackFindings.Of(findings), PackFindings.TrialsOf(findings, first, last),
            PackFigures.Lives(fleet), PackFigures.Strikes(StrikeRates.Of(fleet)), PackFigures.Forecasts(checks),
        ];
        return new AnalystMonth(
            first, last, findings, fleet,
            [.. checks.GroupBy(c => c.Made).OrderByDescending(g => g.Key).Select(g => ForecastCalibration.Of(g.Key, [.. g.Select(c => c.Check)]))],
            [.. tables, PackFigures.Dictionary(tables)]);
    }
}
