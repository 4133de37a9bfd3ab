using FleetWake.Store.Operators;
using FleetWake.Store.Schema;
using Npgsql;

namespace FleetWake.Store.Devices;

/// <summary>Phones at the docks: their codes, their tokens, their end. Every change is one statement, so that two nodes cannot undo each other's.</summary>
public sealed class FleetDevices(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>A code can be used this long.</summary>
    public static readonly TimeSpan CodeLife = TimeSpan.FromMinutes(10);

    /// <summary>A token can be used this long: a phone that winters in a drawer is still known in spring.</summary>
    public static readonly TimeSpan TokenLife = TimeSpan.FromDays(90);

    /// <summary>A phone asks for the next token this long after it got one.</summary>
    public static readonly TimeSpan TokenAge = TimeSpan.FromDays(30);

    /// <summary>The token before is still taken this long.</summary>
    public static readonly TimeSpan FormerLife = TimeSpan.FromMinutes(10);

    private static readonly TimeSpan SeenStep = TimeSpan.FromMinutes(1);

    private const string Columns = "id, operator, dock, name, public_key, hash, token_until, former_hash, former_until, enrolled_at, seen_at, revoked_at";

    // The code goes in the statement that makes the device: of two phones that show it, one finds it gone.
    private const string Claim =
        "with code as (delete from " + DockTables.EnrolmentCodes + " where hash = $1 returning operator, dock, device)"
        + " insert into " + DockTables.Devices + " (id, operator, dock, name, public_key, hash, token_until, enrolled_at, seen_at)"
        + " select device, operator, dock, $2, $3, $4, $5, $6, $6 from code";

    private const string Rotate =
        "update " + DockTables.Devices + " set former_hash = hash, former_until = $3, hash = $2, token_until = $4, signed_at = $5"
        + " where id = $1 and revoked_at is null and (signed_at is null or signed_at < $5)";

    /// <summary>Makes a code for a phone of a dock; codes whose time is over go.</summary>
    public async Task<(string Code, EnrolmentCode Stored)> MakeCodeAsync(string @operator, string dock, string name, string madeBy, CancellationToken ct)
    {
        var (code, now) = (DeviceToken.NewCode(), time.GetUtcNow());
        var stored = new EnrolmentCode(KeySecret.Hash(code), @operator, dock, name, DeviceToken.NewId(), Guid.CreateVersion7(now), madeBy, now + CodeLife);
        await source.RunAsync("delete from " + DockTables.EnrolmentCodes + " where until < $1", ct, now);
        await source.RunAsync(
            "insert into " + DockTables.EnrolmentCodes + " (hash, operator, dock, name, device, entry, made_by, until) values ($1, $2, $3, $4, $5, $6, $7, $8)",
            ct, stored.Hash, @operator, dock, name, stored.Device, stored.Entry, madeBy, stored.Until);
        return (code, stored);
    }

    /// <summary>What a code stands for; null when it was used or its time is over.</summary>
    public async Task<EnrolmentCode?> CodeAsync(string code, CancellationToken ct) =>
        (await source.ReadAsync(
            "select hash, operator, dock, name, device, entry, made_by, until from " + DockTables.EnrolmentCodes + " where hash = $1 and until > $2",
            r => new EnrolmentCode(r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3), r.GetString(4), r.GetGuid(5), r.GetString(6), r.Moment(7)),
            ct, KeySecret.Hash(code), time.GetUtcNow())).FirstOrDefault();

    /// <summary>Uses a code up and makes its device; null when somebody used it up before.</summary>
    public async Task<IssuedToken?> EnrolAsync(EnrolmentCode code, string name, string publicKey, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var issued = Issue(code.Device, now);
        return await source.RunAsync(Claim, ct, code.Hash, name, publicKey, KeySecret.Hash(issued.Token), issued.Until, now) > 0 ? issued : null;
    }

    /// <summary>A device by its id; null when there is none.</summary>
    public async Task<DeviceCard?> FindAsync(string id, CancellationToken ct) =>
        (await ReadAsync("select " + Columns + " from " + DockTables.Devices + " where id = $1", ct, id)).FirstOrDefault();

    /// <summary>Every device of an operator, revoked ones too, the newest first.</summary>
    public Task<IReadOnlyList<DeviceCard>> OfAsync(string @operator, CancellationToken ct) =>
        ReadAsync("select " + Columns + " from " + DockTables.Devices + " where operator = $1 order by enrolled_at desc, id", ct, @operator);

    /// <summary>Notes that a device was heard of; once a minute is enough.</summary>
    public async Task SeenAsync(DeviceCard device, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        if (device.SeenAt is { } seen && now - seen < SeenStep) return;
        await source.RunAsync("update " + DockTables.Devices + " set seen_at = $2 where id = $1 and (seen_at is null or seen_at < $2)", ct, device.Id, now);
    }

    /// <summary>Gives a device its next token; null when it was revoked meanwhile, or asked by a signature no newer than its last one, which is a repeat.</summary>
    public async Task<IssuedToken?> RotateAsync(string id, DateTimeOffset signedAt, CancellationToken ct)
    {
        var now = time.GetUtcNow();
        var issued = Issue(id, now);
        return await source.RunAsync(Rotate, ct, id, KeySecret.Hash(issued.Token), now + FormerLife, issued.Until, signedAt) > 0 ? issued : null;
    }

    /// <summary>Revokes a device of an operator; false when there is none, or it was revoked before.</summary>
    public async Task<bool> RevokeAsync(string @operator, string id, CancellationToken ct) =>
        await source.RunAsync("update " + DockTables.Devices + " set revoked_at = $3 where operator = $1 and id = $2 and revoked_at is null", ct, @operator, id, time.GetUtcNow()) > 0;

    private static IssuedToken Issue(string device, DateTimeOffset now) => new(DeviceToken.New(device), now + TokenLife, now + TokenAge);

    private Task<IReadOnlyList<DeviceCard>> ReadAsync(string sql, CancellationToken ct, params object?[] values) => source.ReadAsync(
        sql,
        r => new DeviceCard(
            r.GetString(0), r.GetString(1), r.GetString(2), r.GetString(3), r.GetString(4), r.GetString(5), r.Moment(6), r.Text(7), r.MaybeMoment(8), r.Moment(9), r.MaybeMoment(10), r.MaybeMoment(11)),
        ct, values);
}
