using FleetWake.Store.Schema;
using Marten;
using Npgsql;

namespace FleetWake.Tests.Kit;

/// <summary>A fresh database with the record's schema, and a store on it.</summary>
public sealed class FleetDatabase : IAsyncDisposable
{
    private FleetDatabase(NpgsqlDataSource source, DocumentStore store) => (Source, Store) = (source, store);

    public NpgsqlDataSource Source { get; }

    public DocumentStore Store { get; }

    public static async Task<FleetDatabase> OnAsync(string connectionString, CancellationToken ct = default)
    {
        var source = NpgsqlDataSource.Create(connectionString);
        await SchemaSteps.ApplyAsync(source, ct);
        return new FleetDatabase(source, FleetStore.Open(source));
    }

    public async ValueTask DisposeAsync()
    {
        Store.Dispose();
        await Source.DisposeAsync();
    }
}
