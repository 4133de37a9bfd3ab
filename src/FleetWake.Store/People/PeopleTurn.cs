using Marten;
using Marten.Services;
using Npgsql;

namespace FleetWake.Store.People;

/// <summary>
/// One change at a time of who keeps an operator's record. Two administrators who take each other's role at one moment must not
/// both succeed, nor two invitations to one id or address.
/// </summary>
internal sealed class PeopleTurn : IAsyncDisposable
{
    private readonly NpgsqlConnection connection;
    private readonly NpgsqlTransaction transaction;

    private PeopleTurn(NpgsqlConnection connection, NpgsqlTransaction transaction, IDocumentSession session) =>
        (this.connection, this.transaction, Session) = (connection, transaction, session);

    /// <summary>What is changed in this turn.</summary>
    public IDocumentSession Session { get; }

    /// <summary>Waits for the turn.</summary>
    public static async Task<PeopleTurn> TakeAsync(IDocumentStore store, NpgsqlDataSource source, string @operator, CancellationToken ct)
    {
        var connection = await source.OpenConnectionAsync(ct);
        try
        {
            var transaction = await connection.BeginTransactionAsync(ct);
            await using var turn = new NpgsqlCommand("select pg_advisory_xact_lock(hashtextextended($1, 0))", connection, transaction) { Parameters = { new() { Value = "people of " + @operator } } };
            await turn.ExecuteNonQueryAsync(ct);
            var within = SessionOptions.ForTransaction(transaction);
            within.TenantId = @operator;
            return new PeopleTurn(connection, transaction, store.LightweightSession(within));
        }
        catch
        {
            await connection.DisposeAsync();
            throw;
        }
    }

    /// <summary>Keeps what was changed.</summary>
    public async Task EndAsync(CancellationToken ct)
    {
        await Session.SaveChangesAsync(ct);
        await transaction.CommitAsync(ct);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await Session.DisposeAsync();
        await transaction.DisposeAsync();
        await connection.DisposeAsync();
    }
}
