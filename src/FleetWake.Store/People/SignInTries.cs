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

    // The wait doubles from a minute on. A day without a try forgets. A try while waiting is not counted, or nobody could ever come back.
    private const string Take = $"""
        insert into {WorkTables.SignInTries} as t (name, wrong, tried_at, not_before) values ($1, 1, $2, null)
        on conflict (name) do update set
          wrong = case when t.tried_at < $2 - interval '1 day' then 1 else t.wrong + 1 end,
          tried_at = $2,
          not_before = case when t.tried_at >= $2 - interval '1 day' and t.wrong + 1 >= $3
            then $2 + least(interval '1 hour', interval '1 minute' * power(2, least(t.wrong + 1 - $3, 10))) end
        where t.not_before is null or t.not_before <= $2
        returning wrong
        """;

    /// <summary>Counts a try; how long to wait when it may not be made.</summary>
    public async Task<TimeSpan?> TakeAsync(string name, IPAddress? place, CancellationToken ct)
    {
        foreach (var (key, free) in Keys(name, place))
        {
            if ((await source.ReadAsync(Take, r => r.GetInt32(0), ct, key, time.GetUtcNow(), free)).Count == 0) return await WaitAsync(key, ct);
        }

        return null;
    }

    /// <summary>A try was right: what was counted under its name is forgotten. What was counted for the place stays, or one right try would free many wrong ones.</summary>
    public async Task ForgetAsync(string name, IPAddress? place, CancellationToken ct)
    {
        await source.RunAsync($"delete from {WorkTables.SignInTries} where name = $1", ct, Keys(name, null).Single().Key);
        if (place is null) return;
        await source.RunAsync($"update {WorkTables.SignInTries} set wrong = greatest(wrong - 1, 0) where name = $1", ct, Keys(name, place).Last().Key);
    }

    private async Task<TimeSpan> WaitAsync(string key, CancellationToken ct)
    {
        var until = (await source.ReadAsync($"select not_before from {WorkTables.SignInTries} where name = $1", r => r.MaybeMoment(0), ct, key)).FirstOrDefault() ?? time.GetUtcNow();
        return until > time.GetUtcNow() ? until - time.GetUtcNow() : TimeSpan.FromSeconds(1);
    }

    // Hashed: neither a mistyped password in the wrong field nor an address is kept.
    private static IEnumerable<(string Key, int Free)> Keys(string name, IPAddress? place)
    {
        yield return ("name " + KeySecret.Hash(name.Trim().ToLowerInvariant()), FreeOfName);
        if (place is not null) yield return ("place " + KeySecret.Hash(Net(place)), FreeOfPlace);
    }

    /// <summary>A household has a /64 of IPv6 for itself.</summary>
    private static string Net(IPAddress place)
    {
        if (place.IsIPv4MappedToIPv6) place = place.MapToIPv4();
        var bytes = place.GetAddressBytes();
        return Convert.ToHexString(bytes.AsSpan(0, Math.Min(bytes.Length, 8)));
    }
}
