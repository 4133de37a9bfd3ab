using FleetWake.Store.Schema;
using Npgsql;
using NpgsqlTypes;

namespace FleetWake.Store.Nodes;

/// <summary>
/// Which processes work on this database and when each was last heard of. All times are the database's, so that the
/// clocks of the nodes may be wrong; who is silent is not judged by them, for that clock may be set as well.
/// </summary>
public sealed class NodeBook(NpgsqlDataSource source)
{
    /// <summary>A node unheard of for this long stands still; its sessions are ended so that others can take its work.</summary>
    public static readonly TimeSpan Silence = TimeSpan.FromSeconds(20);

    private const string Beat =
        "insert into " + WorkTables.Nodes + " (node, roles, version, started_at, beat_at) values ($1, $2, $3, clock_timestamp(), clock_timestamp())"
        + " on conflict (node) do update set beat_at = clock_timestamp()";

    // Only those that have not beaten since they were looked at.
    private const string Silent = " (n.node, n.beat_at) in (select * from unnest($1::text[], $2::timestamptz[]))";

    // The database of the sessions is named too: another fleet may lie on the same server.
    private const string EndSessions =
        "select n.node, count(s.pid), count(s.pid) filter (where pg_terminate_backend(s.pid))"
        + " from " + WorkTables.Nodes + " n left join pg_stat_activity s on s.datname = current_database() and s.application_name = $3 || n.node"
        + " where" + Silent + " group by 1 order by 1";

    // Only one whose sessions are gone for good: the next round looks again for any that is left.
    private const string Forget =
        "delete from " + WorkTables.Nodes + " n where" + Silent
        + " and not exists (select from pg_stat_activity s where s.datname = current_database() and s.application_name = $3 || n.node)";

    private const string All =
        "select node, roles, version, started_at, extract(epoch from clock_timestamp() - beat_at)::float8 from " + WorkTables.Nodes + " order by started_at, node";

    /// <summary>Says that a node lives.</summary>
    public async Task BeatAsync(NodeId node, string roles, string version, CancellationToken ct)
    {
        await using var command = source.CreateCommand(Beat);
        command.Parameters.AddRange(new NpgsqlParameter[] { new() { Value = node.Value }, new() { Value = roles }, new() { Value = version } });
        command.CommandTimeout = (int)Silence.TotalSeconds / 2;
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>Takes a node that ends in good order off the list.</summary>
    public async Task LeaveAsync(NodeId node, CancellationToken ct)
    {
        await using var command = source.CreateCommand("delete from " + WorkTables.Nodes + " where node = $1");
        command.Parameters.Add(new NpgsqlParameter { Value = node.Value });
        await command.ExecuteNonQueryAsync(ct);
    }

    /// <summary>The last beat of every other node.</summary>
    public async Task<IReadOnlyDictionary<string, DateTimeOffset>> BeatsAsync(NodeId judge, CancellationToken ct)
    {
        await using var command = source.CreateCommand("select node, beat_at from " + WorkTables.Nodes + " where node <> $1");
        command.Parameters.Add(new NpgsqlParameter { Value = judge.Value });
        await using var reader = await command.ExecuteReaderAsync(ct);
        var beats = new Dictionary<string, DateTimeOffset>(StringComparer.Ordinal);
        while (await reader.ReadAsync(ct)) beats.Add(reader.GetString(0), reader.GetFieldValue<DateTimeOffset>(1));
        return beats;
    }

    /// <summary>
    /// Ends the sessions of nodes that stand still, and forgets those that have none any more. What such a node had in
    /// hand is rolled back; it finds its connections broken when it goes on, and begins again.
    /// </summary>
    public async Task<IReadOnlyList<EndedNode>> EndAsync(IReadOnlyList<SilentNode> silent, CancellationToken ct)
    {
        var since = silent.ToDictionary(s => s.Node, s => s.Since, StringComparer.Ordinal);
        var ended = new List<EndedNode>();
        await using (var command = About(EndSessions, silent))
        {
            await using var reader = await command.ExecuteReaderAsync(ct);
            while (await reader.ReadAsync(ct))
                ended.Add(new EndedNode(reader.GetString(0), since[reader.GetString(0)], (int)reader.GetInt64(1), (int)reader.GetInt64(2)));
        }

        if (ended.Count == 0) return ended;
        await using var forget = About(Forget, silent);
        await forget.ExecuteNonQueryAsync(ct);
        return ended;
    }

    /// <summary>Every node on the list, oldest first.</summary>
    public async Task<IReadOnlyList<Node>> AllAsync(CancellationToken ct)
    {
        await using var command = source.CreateCommand(All);
        await using var reader = await command.ExecuteReaderAsync(ct);
        var nodes = new List<Node>();
        while (await reader.ReadAsync(ct))
        {
            nodes.Add(new Node(
                reader.GetString(0), reader.GetString(1), reader.GetString(2), reader.GetFieldValue<DateTimeOffset>(3), TimeSpan.FromSeconds(reader.GetDouble(4))));
        }

        return nodes;
    }

    private NpgsqlCommand About(string sql, IReadOnlyList<SilentNode> silent)
    {
        var command = source.CreateCommand(sql);
        command.Parameters.Add(new NpgsqlParameter { Value = silent.Select(s => s.Node).ToArray() });
        command.Parameters.Add(new NpgsqlParameter { Value = silent.Select(s => s.Beat).ToArray() });
        command.Parameters.Add(new NpgsqlParameter { Value = NodeId.Prefix });
        return command;
    }
}

/// <summary>A process that works on this database.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Roles">What it does: serve, work.</param>
/// <param name="Version">Version of the program.</param>
/// <param name="StartedAt">When it was first heard of.</param>
/// <param name="Since">How long ago it was last heard of.</param>
public sealed record Node(string Id, string Roles, string Version, DateTimeOffset StartedAt, TimeSpan Since)
{
    /// <summary>Unheard of for too long.</summary>
    public bool IsSilent => Since > NodeBook.Silence;

    /// <summary>Whether it does a role.</summary>
    public bool Does(string role) => Roles.Split(' ').Contains(role, StringComparer.Ordinal);
}

/// <summary>A node that stood still and whose sessions were ended.</summary>
/// <param name="Node">Its id.</param>
/// <param name="Since">How long it had not been heard of.</param>
/// <param name="Sessions">How many sessions it had.</param>
/// <param name="Ended">How many of them could be ended.</param>
public sealed record EndedNode(string Node, TimeSpan Since, int Sessions, int Ended);
