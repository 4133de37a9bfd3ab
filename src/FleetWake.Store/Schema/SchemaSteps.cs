using JasperFx;
using Npgsql;

namespace FleetWake.Store.Schema;

/// <summary>Applies and checks the schema.</summary>
public static class SchemaSteps
{
    /// <summary>Oldest server the record is kept on: the product uses nothing newer than this major version has.</summary>
    public const int OldestServerMajor = 15;

    // One number for all nodes: whoever comes second waits, then finds nothing left to do.
    private const long ApplyLock = 0x464C454554;

    /// <summary>Brings the database to this version's schema. Many may call it at once on an empty database.</summary>
    public static async Task ApplyAsync(NpgsqlDataSource source, CancellationToken ct)
    {
        await using var guard = await source.OpenConnectionAsync(ct);
        await Run(guard, "select pg_advisory_lock($1)", ct);
        try
        {
            await using var store = FleetStore.Open(source, AutoCreate.CreateOrUpdate);
            await store.Storage.ApplyAllConfiguredChangesToDatabaseAsync();
        }
        finally
        {
            // The connection goes back to a pool: the lock must not go with it.
            await Run(guard, "select pg_advisory_unlock($1)", CancellationToken.None);
        }
    }

    /// <summary>What differs between the database and this version's schema; null when nothing does.</summary>
    public static async Task<string?> DifferenceAsync(NpgsqlDataSource source, CancellationToken ct)
    {
        await using var store = FleetStore.Open(source, AutoCreate.CreateOrUpdate);
        try
        {
            await store.Storage.Database.AssertDatabaseMatchesConfigurationAsync(ct);
            return null;
        }
        catch (Weasel.Core.Migrations.DatabaseValidationException difference)
        {
            return difference.Message;
        }
    }

    private static async Task Run(NpgsqlConnection connection, string sql, CancellationToken ct)
    {
        await using var command = new NpgsqlCommand(sql, connection) { Parameters = { new() { Value = ApplyLock } }, CommandTimeout = 120 };
        await command.ExecuteNonQueryAsync(ct);
    }
}
