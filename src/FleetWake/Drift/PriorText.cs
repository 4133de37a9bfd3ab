using System.Globalization;
using FleetWake.Logbook.Fleet;

namespace FleetWake.Drift;

/// <summary>Tells in plain words what a fleet has shown of itself.</summary>
internal static class PriorText
{
    /// <summary>The lines.</summary>
    public static IEnumerable<string> Of(FleetPriorCard card)
    {
        yield return card.FittedAt is { } at
            ? Say($"Fleet prior {card.Number} of {at:yyyy-MM-dd HH:mm} ({card.Method}): {card.Boats} boats, {card.Mountings} mountings, {card.Trials} trials.")
            : "No fit of this fleet is recorded yet: this is what the trade expects of any.";
        yield return Say($"One trial scatters by {100 * card.Noise.MedianShare:F2} %, {card.Noise.RpmAt5500:F0} RPM at 5500; half of the boats are quieter. It is grossly wrong once in {1 / card.Noise.GrossErrorChance:F0}.");
        yield return "Drift expected of a prop before its own trials, in RPM per 100 engine hours:";
        // What nobody has here is of interest only while the fleet has shown nothing at all.
        foreach (var group in card.Groups.Where(g => g.Mountings > 0 || card.Number == 0).Append(card.AnyOther))
        {
            var (drift, name) = (group.Drift, group.Material is null ? "any other" : $"{group.Material}, {group.Water} water");
            yield return Say($"  {name,-28}{drift.Value,6:F1}   80 % between {drift.Low:F1} and {drift.High:F1}{(group.Mountings > 0 ? $"   ({group.Mountings} mountings)" : "")}");
        }

        yield return Say($"A boat runs {card.Use.HoursPerDay:F1} engine hours a day over the year{(card.Use.Boats > 0 ? $", by the meters of {card.Use.Boats}" : "")}; by month, against the mean:");
        yield return string.Concat(card.Use.ByMonth.Select((share, i) => Say($"  {CultureInfo.InvariantCulture.DateTimeFormat.AbbreviatedMonthNames[i]} {share:F1}")));
        foreach (var gain in card.Gains) yield return Say($"{gain.Model}: RPM follows power by {gain.Gain:F2} +/- {gain.GainSd:F2}, from {gain.Steps} known changes.");
        yield return Say($"A drift alarm comes when the trials are {card.Alarm.AtToOne:F1} times likelier with drift than without. Of a boat without drift that is {card.Alarm.FalseAlarmsPerBoatYear:F3} times a year (95 % between {card.Alarm.Low:F3} and {card.Alarm.High:F3}), by simulation on {(card.Alarm.OnOwnSchedule ? "this fleet's own trials" : "a usual year of trials")}.");
        yield return "These are figures of a fleet, not of one boat; a prop's own trials correct them.";
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
