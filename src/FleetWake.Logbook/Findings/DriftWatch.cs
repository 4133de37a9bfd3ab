using System.Globalization;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Fleet;
using FleetWake.Statistics.Drift;

namespace FleetWake.Logbook.Findings;

/// <summary>
/// The evidence for drift after the last trial of a mounting, and the alarm that it raised. Work on the prop after an alarm
/// answers it: the evidence begins anew with the trials since.
/// </summary>
/// <param name="EvidenceToOne">How many times likelier the trials are with drift than without [1]; 1 when they say nothing.</param>
/// <param name="AlarmAtToOne">The evidence that raises an alarm [1].</param>
/// <param name="FalseAlarmsPerBoatYear">False alarms to be expected of a boat without drift in a year of such trials [1/a], by simulation.</param>
/// <param name="FalseAlarmsLow">Lower 95 % limit of that [1/a].</param>
/// <param name="FalseAlarmsHigh">Upper 95 % limit of that [1/a].</param>
/// <param name="OnOwnSchedule">The simulation had the fleet's own trials; else a usual year of eight.</param>
public sealed record DriftWatch(
    double EvidenceToOne, double AlarmAtToOne, double FalseAlarmsPerBoatYear, double FalseAlarmsLow, double FalseAlarmsHigh, bool OnOwnSchedule)
{
    /// <summary>The trial at which the alarm was raised; null while there is none, or it was answered by work on the prop.</summary>
    public Guid? RaisedAt { get; init; }

    /// <summary>Dock's date of that trial.</summary>
    public DateOnly? RaisedOn { get; init; }

    /// <summary>Engine hours of that trial [h].</summary>
    public double? RaisedAtHours { get; init; }

    /// <summary>The evidence after that trial [1].</summary>
    public double? RaisedEvidenceToOne { get; init; }

    /// <summary>Alarms of this mounting that work on the prop has answered.</summary>
    public int Answered { get; init; }

    /// <summary>The evidence for people: beyond a thousand a number says no more.</summary>
    public string EvidenceInWords() => EvidenceToOne >= 1000 ? "more than 1,000" : EvidenceToOne.ToString(EvidenceToOne < 10 ? "0.#" : "0", CultureInfo.InvariantCulture);

    /// <summary>Follows the evidence of a mounting; null with fewer than two usable trials.</summary>
    internal static DriftWatch? Of(MountingSeries series, IReadOnlyList<TrialFinding> trials, FleetPriors priors)
    {
        if (series.Trials.Count < 2) return null;
        var (alarm, rest, places, answered) = (priors.Alarm, series.Series, series.Trials, 0);
        while (true)
        {
            // The noise is the fleet's, for that of later trials was not known at the time.
            var evidence = DriftAlarm.Follow(rest, DriftAlarm.Alternative, priors.Drift.Settings);
            var raised = DriftAlarm.First(evidence, alarm.Threshold);
            if (raised is { } at && Answer(series, rest.Trials[at.Trial].Week) is { } work)
            {
                var since = rest.Trials.Index().Where(t => t.Item.Week > work.Week).ToList();
                (rest, places, answered) = (rest with { Trials = [.. since.Select(t => t.Item)] }, [.. since.Select(t => places[t.Index])], answered + 1);
                continue;
            }

            var trial = raised is { } r ? trials[places[r.Trial]] : null;
            return new(
                evidence.Count == 0 ? 1 : Math.Exp(evidence[^1].Log), Math.Exp(alarm.Threshold), alarm.FalseAlarmsPerBoatYear, alarm.Low, alarm.High, alarm.OwnSchedule)
            {
                RaisedAt = trial?.Entry,
                RaisedOn = trial?.On,
                RaisedAtHours = trial?.Hours,
                RaisedEvidenceToOne = raised is { } then ? Math.Exp(then.Log) : null,
                Answered = answered,
            };
        }
    }

    private static DriftEvent? Answer(MountingSeries series, double week) =>
        series.Series.Events.Where(e => e.Kind == StepKind.Repitch && e.Week > week).OrderBy(e => e.Week).Cast<DriftEvent?>().FirstOrDefault();
}
