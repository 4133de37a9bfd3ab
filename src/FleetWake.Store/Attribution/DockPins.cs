using System.Security.Cryptography;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Attribution;

/// <summary>
/// PINs by which people sign on a phone that they share. Tries are counted in the database before a PIN is looked at, so that
/// however many nodes are asked at once, five guesses are heard and no more.
/// </summary>
public sealed class DockPins(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>Digits of a PIN.</summary>
    public const int Digits = 6;

    /// <summary>Wrong tries until it locks.</summary>
    public const int MostTries = 5;

    /// <summary>It stays locked this long.</summary>
    public static readonly TimeSpan Lock = TimeSpan.FromMinutes(15);

    /// <summary>A start code can be used this long.</summary>
    public static readonly TimeSpan StartLife = TimeSpan.FromDays(1);

    private const int StartDigits = 8;

    // A lock whose time is over begins the count anew.
    private const string Try =
        "update " + DockTables.Pins + " set tries = case when locked_until is null then tries + 1 else 1 end,"
        + " locked_until = case when locked_until is null and tries + 1 >= $4 then $3 + $5::interval end"
        + " where operator = $1 and person = $2 and (locked_until is null or locked_until <= $3)"
        + " returning hash, start_hash, start_until, tries";

    private const string Forgive = "update " + DockTables.Pins + " set tries = 0, locked_until = null where operator = $1 and person = $2";

    private const string Start =
        "insert into " + DockTables.Pins + " (operator, person, start_hash, start_until, tries) values ($1, $2, $3, $4, 0)"
        + " on conflict (operator, person) do update set start_hash = excluded.start_hash, start_until = excluded.start_until, tries = 0, locked_until = null";

    /// <summary>Makes a code by which a person sets a PIN, the first one or one that replaces a forgotten one; it is shown once.</summary>
    public async Task<string> MakeStartCodeAsync(string @operator, string person, CancellationToken ct)
    {
        var code = RandomNumberGenerator.GetString("0123456789", StartDigits);
        await source.RunAsync(Start, ct, @operator, person, PinHash.Of(code), time.GetUtcNow() + StartLife);
        return code;
    }

    /// <summary>Whether a PIN is the person's.</summary>
    public Task<PinAnswer> CheckAsync(string @operator, string person, string pin, CancellationToken ct) => TryAsync(@operator, person, (row, _) => PinHash.Matches(pin, row.Hash), ct);

    /// <summary>Sets a PIN by the present one or by a start code.</summary>
    public async Task<PinAnswer> SetAsync(string @operator, string person, string pin, string newPin, CancellationToken ct)
    {
        var answer = await TryAsync(@operator, person, (row, now) => PinHash.Matches(pin, row.Hash) || (row.StartUntil > now && PinHash.Matches(pin, row.StartHash)), ct);
        if (answer.Outcome == PinOutcome.Right)
            await source.RunAsync("update " + DockTables.Pins + " set hash = $3, start_hash = null, start_until = null where operator = $1 and person = $2", ct, @operator, person, PinHash.Of(newPin));
        return answer;
    }

    /// <summary>People of an operator who have set a PIN.</summary>
    public async Task<IReadOnlySet<string>> SetByAsync(string @operator, CancellationToken ct) =>
        (await source.ReadAsync("select person from " + DockTables.Pins + " where operator = $1 and hash is not null", r => r.GetString(0), ct, @operator)).ToHashSet(StringComparer.Ordinal);

    private async Task<PinAnswer> TryAsync(string @operator, string person, Func<Row, DateTimeOffset, bool> right, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var row = (await source.ReadAsync(
            Try, r => new Row(r.Text(0), r.Text(1), r.MaybeMoment(2), r.GetInt32(3)), ct, @operator, person, now, MostTries, Lock)).FirstOrDefault();
        if (row is null)
        {
            var locked = (await source.ReadAsync("select locked_until from " + DockTables.Pins + " where operator = $1 and person = $2", r => r.MaybeMoment(0), ct, @operator, person)).FirstOrDefault();
            return locked is { } until ? new PinAnswer(PinOutcome.Locked, 0, until) : new PinAnswer(PinOutcome.NotSet, 0, null);
        }

        if (right(row, now))
        {
            await source.RunAsync(Forgive, ct, @operator, person);
            return new PinAnswer(PinOutcome.Right, MostTries, null);
        }

        return row is { Hash: null, StartHash: null } ? new PinAnswer(PinOutcome.NotSet, 0, null)
            : row.Tries >= MostTries ? new PinAnswer(PinOutcome.Locked, 0, now + Lock)
            : new PinAnswer(PinOutcome.Wrong, MostTries - row.Tries, null);
    }

    private sealed record Row(string? Hash, string? StartHash, DateTimeOffset? StartUntil, int Tries);
}

/// <summary>What became of a try.</summary>
/// <param name="Outcome">What.</param>
/// <param name="TriesLeft">Wrong tries until it locks.</param>
/// <param name="LockedUntil">Until when it is locked.</param>
public sealed record PinAnswer(PinOutcome Outcome, int TriesLeft, DateTimeOffset? LockedUntil);

/// <summary>What can become of a try.</summary>
public enum PinOutcome
{
    /// <summary>It is the person's.</summary>
    Right,

    /// <summary>It is not.</summary>
    Wrong,

    /// <summary>Too many tries; it is not even looked at.</summary>
    Locked,

    /// <summary>The person has none.</summary>
    NotSet,
}
