using Npgsql;

namespace FleetWake.Store.Schema;

/// <summary>What a PostgreSQL server says of itself.</summary>
/// <param name="Version">Version as it writes it.</param>
/// <param name="Major">Major version.</param>
/// <param name="Durable">What it has acknowledged survives a crash.</param>
public sealed record ServerFacts(string Version, int Major, bool Durable)
{
    /// <summary>Asks the server.</summary>
    public static async Task<ServerFacts> AskAsync(NpgsqlDataSource source, CancellationToken ct)
    {
        await using var command = source.CreateCommand(
            "select current_setting('server_version'), current_setting('server_version_num')::int / 10000,"
            + " current_setting('fsync') = 'on' and current_setting('full_page_writes') = 'on' and current_setting('synchronous_commit') <> 'off'");
        await using var reader = await command.ExecuteReaderAsync(ct);
        await reader.ReadAsync(ct);
        return new ServerFacts(reader.GetString(0), reader.GetInt32(1), reader.GetBoolean(2));
    }
}
