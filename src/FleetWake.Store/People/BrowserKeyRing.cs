using Npgsql;

namespace FleetWake.Store.People;

/// <summary>
/// Keys that protect what a browser is given to hand back (the token of a form, the state of a passkey), so that any node
/// reads what another gave. Plain and synchronous as the framework asks for it, which is once a day.
/// </summary>
public sealed class BrowserKeyRing(NpgsqlDataSource source, TimeProvider time)
{
    /// <summary>Every key, as XML, oldest first.</summary>
    public IReadOnlyList<string> All()
    {
        using var command = source.CreateCommand($"select xml from {Schema.WorkTables.BrowserKeys} order by made_at, name");
        using var reader = command.ExecuteReader();
        var all = new List<string>();
        while (reader.Read()) all.Add(reader.GetString(0));
        return all;
    }

    /// <summary>Keeps one.</summary>
    public void Keep(string name, string xml)
    {
        using var command = source.CreateCommand($"insert into {Schema.WorkTables.BrowserKeys} (name, xml, made_at) values ($1, $2, $3) on conflict (name) do nothing");
        command.Parameters.Add(new NpgsqlParameter { Value = name });
        command.Parameters.Add(new NpgsqlParameter { Value = xml });
        command.Parameters.Add(new NpgsqlParameter { Value = time.GetUtcNow() });
        command.ExecuteNonQuery();
    }
}
