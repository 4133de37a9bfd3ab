using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Store.Histories;
using FleetWake.Store.Telemetry;
using Marten;
using Microsoft.Extensions.Logging;

namespace FleetWake.Store.Records;

/// <summary>
/// Takes records into the streams, each exactly once: a receipt is written in the transaction of its facts, so of
/// any number of equal submissions one is recorded and the others get its answer.
/// </summary>
public sealed partial class Recorder(IDocumentStore store, ILogger<Recorder>? log = null)
{
    /// <summary>Takes one record of an operator.</summary>
    public async Task<Answer> TakeAsync(string tenant, RecordKind kind, ICommand command, Arrival arrival, CancellationToken ct)
    {
        var decision = kind.Decide(command, arrival);
        // A refused record is not hashed: it may hold what JSON cannot write, such as 1e400.
        var hash = decision is Decision.Refuse ? null : Receipt.Hash(kind, command);
        for (var round = 1; ; round++)
        {
            try
            {
                var answer = await TryAsync(tenant, command.Entry?.Id, hash, decision, ct);
                FleetMeter.Records.Add(1, FleetMeter.Kind(kind.Name), FleetMeter.Outcome(FleetMeter.OutcomeOf(answer)));
                return answer;
            }
            catch (Exception lost) when (Contention.IsLost(lost, taken: true) && round < Contention.MostRounds)
            {
                // Somebody else wrote to these streams, or took this very entry, in between: look again.
            }
        }
    }

    /// <summary>The answer to a record whose entry was taken before; null when it was not, and then nothing is recorded.</summary>
    public async Task<Answer?> RecallAsync(string tenant, RecordKind kind, ICommand command, Arrival arrival, CancellationToken ct)
    {
        await using var session = store.QuerySession(tenant);
        if (command.Entry?.Id is not { } id || await session.LoadAsync<Receipt>(id, ct) is not { } receipt) return null;
        return await AgainAsync(session, receipt, kind.Decide(command, arrival) is Decision.Refuse ? null : Receipt.Hash(kind, command), ct);
    }

    /// <summary>When the entry that a record came with was entered, as it was recorded first; null when that stands in another stream, or nowhere.</summary>
    public async Task<DateTimeOffset?> FirstOfAsync(string tenant, RecordKind kind, ICommand command, Arrival arrival, CancellationToken ct)
    {
        if (kind.Decide(command, arrival) is not Decision.Keep { Facts: [var placed, ..] }) return null;
        await using var session = store.LightweightSession(tenant);
        var log = await session.Events.FetchLatest<FactLog>(placed.Stream, ct);
        return log?.Facts.FirstOrDefault(f => f.Entry.Id == command.Entry?.Id)?.Entry is { } entry ? entry.Entered() : null;
    }

    private static async Task<Answer> AgainAsync(IQuerySession session, Receipt receipt, string? hash, CancellationToken ct)
    {
        var now = receipt.IsHeld ? await Registrations.AmongAsync(session, receipt.References.Select(r => r.Stream), ct) : [];
        return receipt.Again(hash, now.Contains);
    }

    private async Task<Answer> TryAsync(string tenant, Guid? id, string? hash, Decision decision, CancellationToken ct)
    {
        await using var session = store.LightweightSession(tenant);
        if (id is { } known && await session.LoadAsync<Receipt>(known, ct) is { } receipt) return await AgainAsync(session, receipt, hash, ct);

        if (decision is Decision.Refuse refused) return new Answer(id, Outcome.Refused, false, [], [], refused.Refusals);

        var keep = (Decision.Keep)decision;
        var logs = new Dictionary<string, FactLog>(StringComparer.Ordinal);
        foreach (var placed in keep.Facts)
        {
            var stream = await session.Events.FetchForWriting<FactLog>(placed.Stream, ct);
            stream.AppendOne(placed.Fact);
            logs[placed.Stream] = stream.Aggregate ?? FactLog.Empty(placed.Stream);
        }

        var registered = await Registrations.AmongAsync(session, keep.References.Select(r => r.Stream).Where(s => !logs.ContainsKey(s)), ct);
        var held = Registrations.Holding(keep.References, s => logs.TryGetValue(s, out var log) ? log.Registration() is not null : registered.Contains(s));
        var questions = await QuestionsAsync(session, keep, logs, ct);
        var answer = new Answer(id, held.Count > 0 ? Outcome.Held : Outcome.Recorded, false, held, questions, []);
        session.Insert(new Receipt(id!.Value, hash!, answer, keep.References));
        await session.SaveChangesAsync(ct);
        return answer;
    }

    /// <summary>The questions that these facts raise on their boat and that were not open before.</summary>
    private async Task<IReadOnlyList<Contradiction>> QuestionsAsync(
        IQuerySession session, Decision.Keep keep, Dictionary<string, FactLog> logs, CancellationToken ct)
    {
        var first = logs[keep.Facts[0].Stream];
        if (StreamName.BoatOf(first.Id) is null)
        {
            // A record of an engine or a prop: the boat that its notices named last has it.
            if (Dossier.BoatsNamed(first).LastOrDefault() is not { } boat) return [];
            first = (await Dossiers.LogsAsync(session, [StreamName.Boat(boat)], ct))[StreamName.Boat(boat)];
        }

        var (before, after) = await Dossiers.AroundAsync(session, first, keep.Facts, ct);
        try
        {
            var open = BoatHistory.Tell(before).Contradictions.Select(c => c.Question).ToHashSet(StringComparer.Ordinal);
            return [.. BoatHistory.Tell(after).Contradictions.Where(c => !open.Contains(c.Question))];
        }
        catch (Exception e)
        {
            // Facts are taken even when their boat cannot be told: one of them may be the amendment that mends it.
            if (log is not null) LogUntold(log, e, before.BoatId);
            return [];
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A record of boat {Boat} was taken, but its history cannot be told.")]
    private static partial void LogUntold(ILogger logger, Exception e, string boat);
}
