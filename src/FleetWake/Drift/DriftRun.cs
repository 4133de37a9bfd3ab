using System.Globalization;
using FleetWake.Import;
using FleetWake.Statistics.Drift;
using FleetWake.Statistics.Drift.Fleet;
using FleetWake.Store.Import;

namespace FleetWake.Drift;

/// <summary>A mounting with all that its trials and its fleet say.</summary>
internal sealed record DriftOutcome(DriftRow Row, DriftAssessment Assessment, IReadOnlyList<DriftEvidence> Evidence, DriftEvidence? Alarm);

/// <summary>What a fleet has shown, and the threshold of its alarm.</summary>
internal sealed record DriftFleet(FleetPrior Prior, AlarmCalibration Calibration);

/// <summary>Assesses the tables of drift, each fleet by itself.</summary>
/// <param name="rows">The mountings.</param>
/// <param name="threshold">One threshold of the alarm for all fleets, or null: each has its own, calibrated on its trials.</param>
internal sealed class DriftRun(IReadOnlyList<DriftRow> rows, double? threshold)
{
    private readonly Dictionary<string, Lazy<DriftFleet>> _fleets = rows.GroupBy(r => r.Fleet, StringComparer.Ordinal)
        .ToDictionary(f => f.Key, f => new Lazy<DriftFleet>(() => Fit([.. f.Select(r => r.Member)], threshold)), StringComparer.Ordinal);

    private readonly Lazy<DriftFleet> _unknown = new(() => Fit([], threshold));

    /// <summary>The mountings in the order of their table.</summary>
    public IReadOnlyList<DriftRow> Rows => rows;

    /// <summary>What a mounting's fleet has shown; nothing but the trade's expectation for an unknown fleet.</summary>
    public DriftFleet Fleet(DriftRow row) => _fleets.GetValueOrDefault(row.Fleet, _unknown).Value;

    /// <summary>Everything about one mounting.</summary>
    public DriftOutcome Of(DriftRow row)
    {
        var (prior, settings) = Fleet(row).Prior.Member(row.Member);
        var (evidence, alarm) = Alarm(row);
        return new(row, DriftEstimator.Assess(row.Member.Series, prior, settings), evidence, alarm);
    }

    /// <summary>The evidence trial by trial. The noise is the fleet's, for that of later mountings was not known at the time.</summary>
    public (IReadOnlyList<DriftEvidence> Evidence, DriftEvidence? Alarm) Alarm(DriftRow row)
    {
        var fleet = Fleet(row);
        var evidence = DriftAlarm.Follow(row.Member.Series, DriftAlarm.Alternative, fleet.Prior.Settings);
        return (evidence, DriftAlarm.First(evidence, fleet.Calibration.Threshold));
    }

    /// <summary>The lines of the estimates, their head first.</summary>
    public IEnumerable<string> Estimates()
    {
        FitAll();
        return rows.Select(r => Line(Of(r))).Prepend("mounting_id,slope,slope_lo80,slope_hi80,exit_h,exit_lo80,exit_hi80,p_exit_500h,alarm,alarm_seq");
    }

    /// <summary>The lines of the alarms of another set, their head first.</summary>
    public IEnumerable<string> Alarms(IEnumerable<DriftRow> others)
    {
        FitAll();
        return others.Select(r => CsvText.Line([r.Member.Id, .. Cells(r, Alarm(r).Alarm)])).Prepend("mounting_id,alarm,alarm_seq");
    }

    /// <summary>Fleets have nothing to do with each other: each is fitted on whichever core is free, from the same beginning.</summary>
    private void FitAll() => Parallel.ForEach(_fleets.Values, fleet => _ = fleet.Value);

    private static DriftFleet Fit(IReadOnlyList<FleetMember> members, double? threshold)
    {
        var prior = FleetPrior.Fit(members, WearExpectation.Trade, DriftSettings.Recommended);
        var schedule = members.Select(m => m.Series).ToArray();
        return new(prior, threshold is { } t ? AlarmCalibration.At(t, schedule, prior.Settings) : AlarmCalibration.Of(schedule, prior.Settings));
    }

    private static string Line(DriftOutcome of)
    {
        var (drift, exit) = (of.Assessment.RpmPer100Hours, of.Assessment.Exit);
        return CsvText.Line(
        [
            of.Row.Member.Id, Text(drift.Value, 3), Text(drift.Low, 3), Text(drift.High, 3),
            Text(exit?.MedianHours, 1), Text(exit?.EarliestHours, 1), Text(exit?.LatestHours, 1), Text(exit?.Within500HoursChance, 4),
            .. Cells(of.Row, of.Alarm),
        ]);
    }

    private static string[] Cells(DriftRow row, DriftEvidence? alarm) => alarm is { } a ? ["1", row.TrialNumbers[a.Trial]] : ["0", ""];

    private static string Text(double? value, int digits) => value?.ToString("F" + digits, CultureInfo.InvariantCulture) ?? "";
}
