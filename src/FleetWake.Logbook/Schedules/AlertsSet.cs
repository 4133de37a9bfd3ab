using System.Globalization;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Schedules;

/// <summary>The operator set how alerts are told; it replaces what was set before.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="QuietFrom">From when at night nothing is told that can wait; null for no quiet hours.</param>
/// <param name="QuietUntil">Until when.</param>
/// <param name="GatherMinutes">How long what can wait is gathered into one message [min].</param>
/// <param name="ExitWithinHours">A boat is told that more likely than not leaves its band within so many engine hours [h]; null for none.</param>
/// <param name="Off">No alerts; null for false.</param>
[StoredAs("alerts_set", 1)]
public sealed record AlertsSet(Entry Entry, TimeOnly? QuietFrom, TimeOnly? QuietUntil, int GatherMinutes, int? ExitWithinHours, bool? Off) : IFact;

/// <summary>Sets how alerts are told.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="GatherMinutes">How long what can wait is gathered into one message, 0 to 1440 [min].</param>
/// <param name="QuietFrom">From when at night nothing is told that can wait, e.g. <c>21:00</c> by the clock of the dock whose readers are told, and of the office for readers of the whole fleet; a severe strike and a take-off never wait.</param>
/// <param name="QuietUntil">Until when, e.g. <c>06:30</c>.</param>
/// <param name="ExitWithinHours">Tell of a boat that more likely than not leaves its band within so many engine hours, 1 to 500 [h]; left out, of none.</param>
/// <param name="Off">No alerts.</param>
public sealed record SetAlerts(Stamp? Entry, int? GatherMinutes, string? QuietFrom = null, string? QuietUntil = null, int? ExitWithinHours = null, bool? Off = null) : ICommand<SetAlerts>
{
    /// <inheritdoc/>
    public static string Kind => "alerts_set";

    /// <inheritdoc/>
    public static SetAlerts Example => new(Examples.At(313, "2026-05-01T07:35:00"), 60, "21:00", "06:30", 25);

    /// <inheritdoc/>
    public static string Summary => "Sets quiet hours and grouping of alerts, and how near an exit from the band has to be.";

    /// <inheritdoc/>
    public static Decision Decide(SetAlerts command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var gather = check.Whole(command.GatherMinutes, "/gatherMinutes", 0, 1440, "min");
        if (command.QuietFrom is null != command.QuietUntil is null) check.Refuse(command.QuietFrom is null ? "/quietFrom" : "/quietUntil", "missing", "missing: give begin and end of the quiet hours, or neither");
        var from = Time(command.QuietFrom, "/quietFrom", check);
        var until = Time(command.QuietUntil, "/quietUntil", check);
        if (from is not null && from == until) check.Refuse("/quietUntil", "no_hours", "ends when it begins: leave both out for no quiet hours");
        var exit = check.MaybeWhole(command.ExitWithinHours, "/exitWithinHours", 1, 500, "h");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new AlertsSet(entry!, from, until, gather, exit, command.Off is true ? true : null))], []));
    }

    private static TimeOnly? Time(string? text, string field, Check check)
    {
        if (text is null) return null;
        if (TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time)) return time;
        check.Refuse(field, "not_a_time", "give hours and minutes as in 21:00");
        return null;
    }
}

/// <summary>How alerts are told now.</summary>
/// <param name="QuietFrom">From when at night nothing is told that can wait; null for no quiet hours.</param>
/// <param name="QuietUntil">Until when.</param>
/// <param name="Gather">How long what can wait is gathered into one message.</param>
/// <param name="ExitWithinHours">A boat is told that more likely than not leaves its band within so many engine hours [h]; null for none.</param>
/// <param name="Off">No alerts.</param>
public sealed record AlertRule(TimeOnly? QuietFrom, TimeOnly? QuietUntil, TimeSpan Gather, int? ExitWithinHours, bool Off)
{
    /// <summary>As long as nobody sets anything: quiet from nine in the evening to half past six, an hour of gathering, exits within 25 engine hours. Judgement, no source.</summary>
    public static AlertRule Usual { get; } = new(new TimeOnly(21, 0), new TimeOnly(6, 30), TimeSpan.FromHours(1), 25, false);

    /// <summary>Whether a time of day lies in the quiet hours.</summary>
    public bool IsQuiet(TimeOnly at) => QuietFrom is { } from && QuietUntil is { } until && at.IsBetween(from, until);
}
