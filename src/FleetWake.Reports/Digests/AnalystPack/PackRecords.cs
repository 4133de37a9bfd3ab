using System.Text.Json;
using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;

namespace FleetWake.Reports.Digests.AnalystPack;

/// <summary>The month's records, one a row, as they were told: also those that were amended or retracted since, and marked so.</summary>
internal static class PackRecords
{
    private static readonly PackColumn[] Columns =
    [
        new("entry", PackType.Text, "", "id of the entry"),
        new("kind", PackType.Text, "", "kind of record; docs/record-fields.md says what each holds"),
        new("stream", PackType.Text, "", "whose record it stands in"),
        new("day", PackType.Day, "", "day on which it happened, by the dock's calendar"),
        new("happened_at", PackType.Text, "", "when it happened: local time with its offset (RFC 3339)"),
        new("zone", PackType.Text, "", "IANA zone of the dock"),
        new("by", PackType.Text, "", "who told it: a pseudonymous id"),
        new("received_at", PackType.Text, "", "when it reached the record (UTC)"),
        new("amends", PackType.Text, "", "the entry that it replaces"),
        new("counts", PackType.Truth, "", "it counts: it was neither replaced nor taken back"),
        new("record", PackType.Text, "", "the whole record as JSON"),
    ];

    public static PackTable Of(FleetLogs logs, DateOnly from, DateOnly to)
    {
        var rows = new List<(DateTimeOffset At, object?[] Row)>();
        foreach (var log in logs.Logs)
        {
            var within = log.Facts.Where(f => Day(f.Entry) is var day && day >= from && day <= to).ToList();
            if (within.Count == 0) continue;
            var counting = Effective.Of(log.Facts).Facts.Select(f => f.Entry.Id).ToHashSet();
            foreach (var fact in within) rows.Add((fact.Entry.HappenedAt, Row(log.Id, fact, counting.Contains(fact.Entry.Id))));
        }

        return new PackTable("records", "a record of the month", Columns, [.. rows.OrderBy(r => r.At).ThenBy(r => (string)r.Row[0]!, StringComparer.Ordinal).Select(r => r.Row)]);
    }

    private static DateOnly Day(Entry entry) => DateOnly.FromDateTime(entry.HappenedAt.DateTime);

    private static object?[] Row(string stream, IFact fact, bool counts) =>
    [
        fact.Entry.Id.ToString(),
        LogbookJson.StoredNames[fact.GetType()],
        stream,
        Day(fact.Entry),
        $"{fact.Entry.HappenedAt:yyyy-MM-dd'T'HH:mm:sszzz}",
        fact.Entry.Zone,
        fact.Entry.By,
        $"{fact.Entry.ReceivedAt.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}",
        fact.Entry.Amends?.ToString(),
        counts,
        JsonSerializer.Serialize(fact, LogbookJson.Options),
    ];
}
