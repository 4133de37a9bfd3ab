using JasperFx.Events;
using Npgsql;

namespace FleetWake.Store;

/// <summary>Does again what lost a race for a stream: several senders, a page and a device may all write to the operator's own stream at one moment.</summary>
internal static class Contention
{
    /// <summary>Each round loses only to somebody else's success on the same streams, so a crowd of n needs at most n rounds.</summary>
    public const int MostRounds = 40;

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
            catch (Exception e) when (tries < MostRounds && IsLost(e))
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

    /// <summary>Whether somebody else wrote to the same streams in between, so that it is to be done again from its reads on.</summary>
    /// <param name="e">What was thrown.</param>
    /// <param name="taken">Whether an id that somebody else took in between counts as well: where the loser looks again what stands under it.</param>
    public static bool IsLost(Exception e, bool taken = false) =>
        e is EventStreamUnexpectedMaxEventIdException or JasperFx.Events.ExistingStreamIdCollisionException or Marten.Exceptions.ExistingStreamIdCollisionException
        || (taken && e is JasperFx.DocumentAlreadyExistsException)
        // Two that change several rows may each wait for the other; the database ends one of them.
        || e is PostgresException { SqlState: PostgresErrorCodes.DeadlockDetected } || e.InnerException is PostgresException { SqlState: PostgresErrorCodes.DeadlockDetected }
        // What writes several things at once is told of them all at once; another failure among them is none of a race.
        || (e is AggregateException several && several.InnerExceptions.All(i => IsLost(i, taken: true)) && several.InnerExceptions.Any(i => IsLost(i, taken)));
}
