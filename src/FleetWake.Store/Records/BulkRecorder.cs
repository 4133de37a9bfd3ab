using FleetWake.Logbook.Entries;
using FleetWake.Store.Telemetry;
using Marten;

namespace FleetWake.Store.Records;

/// <summary>One record of a bulk.</summary>
/// <param name="Kind">Its kind.</param>
/// <param name="Command">The record as sent.</param>
/// <param name="Arrival">How it came.</param>
public sealed record Submission(RecordKind Kind, ICommand Command, Arrival Arrival);

/// <summary>
/// Takes many records of one operator at a time, each exactly once, by the same receipts as <see cref="Recorder"/>. One
/// transaction holds a whole chunk: it is recorded or it is not, whenever the program dies. Which questions the records
/// raise is not asked here, for that takes a boat's whole history a record; the findings ask them soon after.
/// </summary>
/// <param name="store">The store.</param>
/// <param name="tenant">The operator.</param>
public sealed class BulkRecorder(IDocumentStore store, string tenant)
{
    // What was found registered stays so for this bulk: a retraction meanwhile shows in the findings.
    private readonly HashSet<string> registered = new(StringComparer.Ordinal);

    /// <summary>Takes a chunk, some hundred records; the answers stand in its order. A chunk that is cancelled is not recorded.</summary>
    public async Task<IReadOnlyList<Answer>> TakeAsync(IReadOnlyList<Submission> chunk, CancellationToken ct)
    {
        var answers = await InRoundsAsync(chunk, keep: true, ct);
        foreach (var outcome in answers.CountBy(FleetMeter.OutcomeOf)) FleetMeter.ImportRows.Add(outcome.Value, FleetMeter.Outcome(outcome.Key));
        return answers;
    }

    /// <summary>What <see cref="TakeAsync"/> would answer, without recording anything.</summary>
    public Task<IReadOnlyList<Answer>> TryAsync(IReadOnlyList<Submission> chunk, CancellationToken ct) => InRoundsAsync(chunk, keep: false, ct);

    private async Task<IReadOnlyList<Answer>> InRoundsAsync(IReadOnlyList<Submission> chunk, bool keep, CancellationToken ct)
    {
        var decided = chunk.Select(Decided.Of).ToList();
        for (var round = 1; ; round++)
        {
            try
            {
                return await OnceAsync(decided, keep, ct);
            }
            catch (Exception lost) when (Contention.IsLost(lost, taken: true) && round < Contention.MostRounds)
            {
                // A phone wrote to one of these streams, or another bulk took one of these entries: look again at all.
            }
        }
    }

    private async Task<IReadOnlyList<Answer>> OnceAsync(IReadOnlyList<Decided> chunk, bool keep, CancellationToken ct)
    {
        await using var session = store.LightweightSession(tenant);
        var receipts = (await session.LoadManyAsync<Receipt>(ct, [.. chunk.Select(d => d.Id).OfType<Guid>().Distinct()])).ToDictionary(r => r.Id);
        await LookUpAsync(session, chunk, receipts.Values, ct);

        var answers = new List<Answer>(chunk.Count);
        var facts = new List<Placed>();
        // What this chunk itself registers, wherever in it: not what a conflict would, nor a repeat, which may be taken back since.
        var here = chunk.Where(d => d.Id is { } id && !receipts.ContainsKey(id)).DistinctBy(d => d.Id)
            .SelectMany(d => d.Registers).ToHashSet(StringComparer.Ordinal);
        foreach (var record in chunk)
        {
            if (record.Id is { } id && receipts.TryGetValue(id, out var receipt))
            {
                answers.Add(receipt.Again(record.Hash, Known));
                continue;
            }

            if (record.Decision is not Decision.Keep kept)
            {
                answers.Add(new Answer(record.Id, Outcome.Refused, false, [], [], ((Decision.Refuse)record.Decision).Refusals));
                continue;
            }

            var held = Registrations.Holding(kept.References, Known);
            var answer = new Answer(record.Id, held.Count > 0 ? Outcome.Held : Outcome.Recorded, false, held, [], []);
            var fresh = new Receipt(record.Id!.Value, record.Hash!, answer, kept.References);
            receipts.Add(fresh.Id, fresh); // An id that comes twice in one chunk is answered from the first.
            session.Insert(fresh);
            facts.AddRange(kept.Facts);
            answers.Add(answer);
        }

        if (keep && facts.Count > 0)
        {
            await AppendAsync(session, facts, ct);
            await session.SaveChangesAsync(ct);
        }

        registered.UnionWith(here);
        return answers;

        bool Known(string stream) => registered.Contains(stream) || here.Contains(stream);
    }

    /// <summary>Asks for what these records name, and those held before that come again.</summary>
    private async Task LookUpAsync(IQuerySession session, IReadOnlyList<Decided> chunk, IEnumerable<Receipt> receipts, CancellationToken ct)
    {
        var named = chunk.Select(d => d.Decision).OfType<Decision.Keep>().SelectMany(k => k.References)
            .Concat(receipts.Where(r => r.IsHeld).SelectMany(r => r.References))
            .Select(r => r.Stream)
            .Where(s => !registered.Contains(s));
        registered.UnionWith(await Registrations.AmongAsync(session, named, ct));
    }

    /// <summary>Appends to each stream once, and only where it still is as it was looked at.</summary>
    private static async Task AppendAsync(IDocumentSession session, IEnumerable<Placed> facts, CancellationToken ct)
    {
        var streams = facts.GroupBy(f => f.Stream, f => (object)f.Fact, StringComparer.Ordinal).ToList();
        var batch = session.CreateBatchQuery();
        var states = streams.Select(s => batch.Events.FetchStreamState(s.Key)).ToList();
        await batch.Execute(ct);
        for (var i = 0; i < streams.Count; i++)
        {
            var events = streams[i].ToList();
            if (await states[i] is { } state) session.Events.Append(streams[i].Key, state.Version + events.Count, events);
            else session.Events.StartStream(streams[i].Key, events);
        }
    }

    /// <summary>A record with what the rules say of it.</summary>
    private sealed record Decided(Guid? Id, Decision Decision, string? Hash)
    {
        /// <summary>Streams of what the record registers.</summary>
        public IEnumerable<string> Registers =>
            Decision is Decision.Keep keep ? keep.Facts.Where(f => f.Fact is IRegistration).Select(f => f.Stream) : [];

        public static Decided Of(Submission s)
        {
            var decision = s.Kind.Decide(s.Command, s.Arrival);
            return new Decided(s.Command.Entry?.Id, decision, decision is Decision.Refuse ? null : Receipt.Hash(s.Kind, s.Command));
        }
    }
}
