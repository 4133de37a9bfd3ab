using FleetWake.Logbook.Entries;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Attribution;

/// <summary>
/// Which entries of a dock's phone somebody confirmed by a PIN. A phone is shared, so that "by" is a claim until then; with
/// a PIN it is a better one, and not proof (docs/decisions/0025).
/// </summary>
public sealed class DockSignatures(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>Notes that a person confirmed some entries of a device.</summary>
    public Task ConfirmAsync(string @operator, string device, string person, IReadOnlyCollection<Guid> entries, CancellationToken ct) => source.RunAsync(
        "insert into " + DockTables.Signatures + " (operator, entry, person, device, confirmed_at) select $1, e, $3, $4, $5 from unnest($2::uuid[]) e on conflict do nothing",
        ct, @operator, entries.Distinct().ToArray(), person, device, time.GetUtcNow());

    /// <summary>
    /// How sure it is who told each of some entries. An entry that came from no dock's phone is left out: a program or
    /// the office told it.
    /// </summary>
    public async Task<IReadOnlyDictionary<Guid, Attribution>> AttributionsAsync(string @operator, IReadOnlyCollection<Entry> entries, CancellationToken ct)
    {
        var phones = (await source.ReadAsync("select id from " + DockTables.Devices + " where operator = $1", r => r.GetString(0), ct, @operator)).ToHashSet(StringComparer.Ordinal);
        var told = entries.Where(e => phones.Contains(e.Device)).DistinctBy(e => e.Id).ToList();
        var confirmed = (await source.ReadAsync(
            "select entry, person, device, confirmed_at from " + DockTables.Signatures + " where operator = $1 and entry = any($2)",
            r => (Entry: r.GetGuid(0), Person: r.GetString(1), Device: r.GetString(2), At: r.Moment(3)), ct, @operator, told.Select(e => e.Id).ToArray())).ToLookup(c => c.Entry);

        // Only whom the entry names can confirm it, and only on the phone that it came from.
        return told.ToDictionary(e => e.Id, e => new Attribution(confirmed[e.Id].Where(c => c.Person == e.By && c.Device == e.Device).Select(c => (DateTimeOffset?)c.At).FirstOrDefault()));
    }
}

/// <summary>How sure it is who told an entry of a dock's phone.</summary>
/// <param name="ConfirmedAt">When the person confirmed it by PIN; null while it is only claimed.</param>
public sealed record Attribution(DateTimeOffset? ConfirmedAt);
