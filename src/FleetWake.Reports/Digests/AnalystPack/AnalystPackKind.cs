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
        var month = await ReadAsync(reading, wanted.Operator.Id, Periods.FirstDay(wanted.Period) ?? new DateOnly(wanted.Day.Year, wanted.Day.Month, 1).AddMonths(-1), ct);
        return month.Findings.Count == 0 ? new Composed.NotYet() : new Composed.Ready(await AnalystPackDigest.DraftAsync(wanted.Operator.Name, month, sender.PublicUrl, ct));
    }

    /// <summary>A month of an operator, read whole.</summary>
    public static async Task<AnalystMonth> ReadAsync(FleetReading reading, string @operator, DateOnly first, CancellationToken ct)
    {
        var logs = new FleetLogs();
        string[] prefixes = [StreamName.Boat(""), StreamName.Engine(""), StreamName.Prop(""), StreamName.Part("")];
        foreach (var prefix in prefixes)
            foreach (var some in (await reading.StreamsAsync(@operator, prefix, ct)).Chunk(64))
                foreach (var log in (await reading.LogsAsync(@operator, some, ct)).Values) logs.Add(log.Facts.Select(f => new Placed(log.Id, f)));
        logs.Add((await reading.OfficeLogAsync(@operator, ct)).Facts.Select(f => new Placed(StreamName.Operator, f)));
        return AnalystMonth.Of(logs, first, FleetPriors.Of(await reading.FittedPriorAsync(@operator, ct)));
    }
}
