using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Office;
using FleetWake.Logbook.Schedules;
using FleetWake.Reports.Digests.Issue;
using FleetWake.Store.Histories;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>The analyst's pack of the month before. It is of the whole fleet whatever dock its reader has: lives and rates of one dock alone say little.</summary>
public sealed class AnalystPackKind(FleetReading reading, Sender sender) : IDigestKind
{
    /// <inheritdoc/>
    public string Digest => AnalystPackDigest.Digest;

    /// <inheritdoc/>
    public ScheduledDigest Scheduled => ScheduledDigest.AnalystPack;

    /// <inheritdoc/>
    public async Task<Composed> ComposeAsync(Wanted wanted, CancellationToken ct)
    {
        // By a clock ahead of the office's it is asked for while the month's last day is not over there.
        var last = Periods.Month(wanted.Day) == wanted.Period && wanted.Day.AddDays(1).Day == 1;
        if (last && !wanted.Late) return new Composed.NotYet();
        var month = await ReadAsync(reading, wanted.Operator.Id, MonthOf(wanted.Period, last ? wanted.Day.AddDays(1) : wanted.Day), ct);
        return month.Findings.Count == 0 ? new Composed.NotYet() : new Composed.Ready(await AnalystPackDigest.DraftAsync(wanted.Operator.Name, month, sender.PublicUrl, ct));
    }

    /// <summary>First day of the month that an edition is of: its period where that is a month that has ended, else the month before its day.</summary>
    internal static DateOnly MonthOf(string period, DateOnly day) =>
        Periods.FirstDay(period) is { } first && Periods.Month(first) == period && first.AddMonths(1) <= day ? first : new DateOnly(day.Year, day.Month, 1).AddMonths(-1);

    /// <summary>A month of an operator, read whole.</summary>
    public static async Task<AnalystMonth> ReadAsync(FleetReading reading, string @operator, DateOnly first, CancellationToken ct)
    {
        var logs = new FleetLogs();
        string[] prefixes = [StreamName.Boat(""), StreamName.Engine(""), StreamName.Prop(""), StreamName.Part("")];
        foreach (var prefix in prefixes)
            foreach (var some in (await reading.StreamsAsync(@operator, prefix, ct)).Chunk(64))
                foreach (var log in (await reading.LogsAsync(@operator, some, ct)).Values) logs.Add(log.Facts.Select(f => new Placed(log.Id, f)));
        logs.Add((await reading.OfficeLogAsync(@operator, ct)).Facts.Select(f => new Placed(StreamName.Operator, f)));
        var priors = new Dictionary<DateOnly, FleetPriors>();
        foreach (var day in AnalystMonth.DaysOf(first)) priors[day] = await reading.PriorsOfDayAsync(@operator, day, ct);
        return AnalystMonth.Of(logs, first, day => priors[day]);
    }
}
