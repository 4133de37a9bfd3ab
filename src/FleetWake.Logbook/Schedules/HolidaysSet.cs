using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Schedules;

/// <summary>The operator gave its list of holidays, on which digests wait or are skipped; it replaces the list before. Dates alone: what is kept on them is nobody's business here.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Dates">The dates, in order.</param>
[StoredAs("holidays_set", 1)]
public sealed record HolidaysSet(Entry Entry, IReadOnlyList<DateOnly> Dates) : IFact;

/// <summary>Gives the list of holidays.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Dates">The dates, e.g. <c>2026-12-25</c>; at most 400. An empty list for none.</param>
public sealed record SetHolidays(Stamp? Entry, IReadOnlyList<string>? Dates) : ICommand<SetHolidays>
{
    /// <summary>Ten years and more of holidays.</summary>
    public const int Most = 400;

    /// <inheritdoc/>
    public static string Kind => "holidays_set";

    /// <inheritdoc/>
    public static SetHolidays Example => new(Examples.At(312, "2026-05-01T07:30:00"), ["2026-05-17", "2026-12-25", "2026-12-26"]);

    /// <inheritdoc/>
    public static string Summary => "Gives the operator's list of holidays, on which digests wait for the next day or are skipped.";

    /// <inheritdoc/>
    public static Decision Decide(SetHolidays command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        if (command.Dates is null) check.Refuse("/dates", "missing", "missing: give the dates, or an empty list for none");
        var dates = check.List(command.Dates, "/dates", 0, Most).Select((d, n) => check.Date(d ?? "", $"/dates/{n}")).OfType<DateOnly>().Distinct().Order().ToList();
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new HolidaysSet(entry!, dates))], []));
    }
}
