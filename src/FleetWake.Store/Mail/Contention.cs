using JasperFx.Events;
using Npgsql;

namespace FleetWake.Store.Mail;

/// <summary>Does again what lost a race for a stream: several senders, a page and a device may all write to the operator's own stream at one moment.</summary>
internal static class Contention
{
    // Each round loses only to somebody else's success: a crowd of n needs at most n.
    private const int MostTries = 40;

    /// <summary>Runs a whole transaction, and again when another was first.</summary>
    /// <param name="transaction">The transaction, from its reads on.</param>
    /// <param name="ct">Ends the wait.</param>
    public static async Task<T> SettleAsync<T>(Func<Task<T>> transaction, CancellationToken ct)
    {
        for (var tries = 1; ; tries++)
        {
            try
            {
                return await transaction();
            }
            catch (Exception e) when (tries < MostTries && IsLost(e))
            {
                // Each waits a little longer than the one before it; who is first is soon done.
                await Task.Delay(TimeSpan.FromMilliseconds(5 * tries), TimeProvider.System, ct);
            }
        }
    }

    /// <inheritdoc cref="SettleAsync{T}(Func{Task{T}}, CancellationToken)"/>
    public static Task SettleAsync(Func<Task> transaction, CancellationToken ct) => SettleAsync(
        async () =>
        {
            await transaction();
            return true;
        },
        ct);

    private static bool IsLost(Exception e) => e is EventStreamUnexpectedMaxEventIdException or ExistingStreamIdCollisionException
        // Two that change several rows may each wait for the other; the database ends one of them.
        || e is PostgresException { SqlState: PostgresErrorCodes.DeadlockDetected } || e.InnerException is PostgresException { SqlState: PostgresErrorCodes.DeadlockDetected }
        || (e is AggregateException several && several.InnerExceptions.Any(IsLost));
}
