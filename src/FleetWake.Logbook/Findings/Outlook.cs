using FleetWake.Logbook.Duties;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Findings;

/// <summary>What of a finding depends on the day.</summary>
public static class Outlook
{
    /// <summary>Months between two looks at prop and shaft. Common practice, no source; the owner's manual wins.</summary>
    public const int InspectionMonths = 6;

    /// <summary>Everything due on a boat, most overdue first.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="day">The day, in the calendar of the boat's dock.</param>
    public static IReadOnlyList<DueItem> Of(BoatFinding finding, DateOnly day)
    {
        if (finding.Registered is not { } card) return [];
        return
        [
            .. finding.Positions
                .SelectMany(p => Due(p).Select(d => new DueItem(
                    d.Kind, finding.Boat, card.Name, card.Dock, p.Position, d.On, day.DayNumber - d.On.DayNumber, d.Why)))
                .OrderBy(d => d.DueOn).ThenBy(d => d.Kind).ThenBy(d => d.Position),
        ];
    }

    /// <summary>
    /// The date some months on, in calendar months: 31 August and six months is the last day of February.
    /// Always reckoned from the day of the last look, so that a clamped month-end does not creep.
    /// </summary>
    public static DateOnly InspectionDue(DateOnly lookedAtOn) => lookedAtOn.AddMonths(InspectionMonths);

    private static IEnumerable<(DutyKind Kind, DateOnly On, string Why)> Due(PositionFinding position)
    {
        foreach (var strike in position.OpenStrikes)
            yield return (DutyKind.AfterStrikeInspection, strike.On, $"strike on {strike.On:yyyy-MM-dd} ({Words.Prose(strike.Severity)})");
        if (position.LookedAtOn is { } looked)
            yield return (DutyKind.SixMonthlyInspection, InspectionDue(looked), $"prop and shaft last looked at on {looked:yyyy-MM-dd}");
    }
}
