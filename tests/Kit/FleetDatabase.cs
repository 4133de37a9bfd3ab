using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Tests.Kit;

/// <summary>A database with the record's schema, and a store on it.</summary>
public sealed class FleetDatabase : IAsyncDisposable
{
    private FleetDatabase(NpgsqlDataSource source, DocumentStore store) => (Source, Store) = (source, store);

    public NpgsqlDataSource Source { get; }

    public DocumentStore Store { get; }

    public static async Task<FleetDatabase> OnAsync(string connectionString, CancellationToken ct = default)
    {
        var source = NpgsqlDataSource.Create(connectionString);
        await SchemaAsync(source, ct);
        return new FleetDatabase(source, FleetStore.Open(source));
    }

    /// <summary>Applies the schema, unless the database is a copy of one that has it: to look at each table takes a second.</summary>
    public static async Task SchemaAsync(NpgsqlDataSource source, CancellationToken ct)
    {
        await using var ask = source.CreateCommand($"select to_regclass('{FleetStore.SchemaName}.mt_events') is null");
        if ((bool)(await ask.ExecuteScalarAsync(ct))!) await SchemaSteps.ApplyAsync(source, ct);
    }

    public async ValueTask DisposeAsync()
    {
        Store.Dispose();
        await Source.DisposeAsync();
    }
}
