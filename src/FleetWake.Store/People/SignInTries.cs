using System.Net;
using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.People;

/// <summary>
/// Wrong tries at signing in, counted under what was typed and under where it came from, whether or not anybody is known by
/// it: so that waiting tells nothing. A try is counted before the password is looked at, so that many at once gain nothing.
/// </summary>
public sealed class SignInTries(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>Wrong tries under one name before waiting begins.</summary>
    public const int FreeOfName = 5;

    /// <summary>The same from one place: an office shares one.</summary>
    public const int FreeOfPlace = 40;

    /// <summary>The longest wait.</summary>
    public static readonly TimeSpan LongestWait = TimeSpan.FromHours(1);

    /// <summary>A wrong try under a name is forgotten after this long.</summary>
    private static readonly TimeSpan ForgetsOfName = TimeSpan.FromHours(1);

    /// <summary>The same of a place: ten an hour, as an office of some size mistypes.</summary>
    private static readonly TimeSpan ForgetsOfPlace = TimeSpan.FromMinutes(6);

    private const string Counted = "greatest(0, t.wrong - floor(extract(epoch from greatest(interval '0', $2 - t.tried_at)) / extract(epoch from $4::interval)))::int + 1";

    // The wait doubles from a minute on. A try while waiting is not counted, or nobody could ever come back. Tries are forgotten one after
    // the other, so that a season's slips of the finger do not add up.
    private const string Take = $"""
        insert into {WorkTables.SignInTries} as t (name, wrong, tried_at, not_before) values ($1, 1, $2, null)
        on conflict (name) do update set
          wrong = {Counted},
          tried_at = $2,
          not_before = case when {Counted} >= $3 then $2 + least(interval '1 hour', interval '1 minute' * power(2, least({Counted} - $3, 10))) end
        where t.not_before is null or t.not_before <= $2
        returning wrong
        """;

    /// <summary>Counts a try; how long to wait when it may not be made. The place is asked first: a place that waits adds nothing to anybody's name.</summary>
    public async Task<TimeSpan?> TakeAsync(string name, IPAddress? place, CancellationToken ct)
    {
        if (place is not null && await TakeAsync(KeyOf(place), FreeOfPlace, ForgetsOfPlace, ct) is { } wait) return wait;
        return await TakeAsync(KeyOf(name), FreeOfName, ForgetsOfName, ct);
    }

    /// <summary>
    /// A try was right: what was counted under its name is forgotten. Where several are known by that name it is taken off and no
    /// more, as for the place: one right try would else free many wrong ones at the others' passwords.
    /// </summary>
    /// <param name="name">What was typed.</param>
    /// <param name="place">Where it came from.</param>
    /// <param name="alone">Whether one person is known by the name.</param>
    /// <param name="ct">Ends the work.</param>
    public async Task ForgetAsync(string name, IPAddress? place, bool alone, CancellationToken ct)
    {
        await source.RunAsync(alone ? $"delete from {WorkTables.SignInTries} where name = $1" : TakeOff, ct, KeyOf(name));
        if (place is not null) await source.RunAsync(TakeOff, ct, KeyOf(place));
        await source.RunAsync($"delete from {WorkTables.SignInTries} where tried_at < $1", ct, time.GetUtcNow() - KeptFor);
    }

    private const string TakeOff = $"update {WorkTables.SignInTries} set wrong = greatest(wrong - 1, 0), not_before = null where name = $1";

    /// <summary>Longer than anything is counted or waited for.</summary>
    private static readonly TimeSpan KeptFor = TimeSpan.FromDays(1);

    private async Task<TimeSpan?> TakeAsync(string key, int free, TimeSpan forgets, CancellationToken ct) =>
        (await source.ReadAsync(Take, r => r.GetInt32(0), ct, key, time.GetUtcNow(), free, forgets)).Count == 0 ? await WaitAsync(key, ct) : null;

    private async Task<TimeSpan> WaitAsync(string key, CancellationToken ct)
    {
        var until = (await source.ReadAsync($"select not_before from {WorkTables.SignInTries} where name = $1", r => r.MaybeMoment(0), ct, key)).FirstOrDefault() ?? time.GetUtcNow();
        return until > time.GetUtcNow() ? until - time.GetUtcNow() : TimeSpan.FromSeconds(1);
    }

    // Hashed, so that neither a password typed into the wrong field nor an address is read by chance; and kept for a day at most.
    private static string KeyOf(string name) => "name " + KeySecret.Hash(name.Trim().ToLowerInvariant());

    private static string KeyOf(IPAddress place) => "place " + KeySecret.Hash(Net(place));

    /// <summary>A household has a /64 of IPv6 for itself.</summary>
    private static string Net(IPAddress place)
    {
        if (place.IsIPv4MappedToIPv6) place = place.MapToIPv4();
        var bytes = place.GetAddressBytes();
        return Convert.ToHexString(bytes.AsSpan(0, Math.Min(bytes.Length, 8)));
    }
}
