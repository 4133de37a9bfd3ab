using FleetWake.Logbook.Entries;
using FleetWake.Store.Records;

namespace FleetWake.Store.Import;

/// <summary>A row with what came of it.</summary>
/// <param name="Row">The row.</param>
/// <param name="Answer">The answer to its record; null when it makes none.</param>
/// <param name="Bad">Why it is not in the record as it stands in its table; empty when it is.</param>
public sealed record AnsweredRow(ReadRow Row, Answer? Answer, IReadOnlyList<BadCell> Bad)
{
    /// <summary>What it waits for to be registered, in words.</summary>
    public IEnumerable<string> WaitsFor => (Answer?.Held ?? []).Select(h => h.Message.Split(':')[0]);
}

/// <summary>Brings rows into the record, a chunk a transaction.</summary>
public static class RowChunk
{
    /// <summary>Rows in one transaction: enough that round trips do not count, few enough that a kill loses little.</summary>
    public const int Rows = 500;

    private const string Device = "import";

    /// <summary>Takes a chunk of rows; the answers stand in its order.</summary>
    /// <param name="bulk">Takes the records.</param>
    /// <param name="chunk">The rows.</param>
    /// <param name="now">When they came.</param>
    /// <param name="keep">Whether they are recorded, or only tried.</param>
    /// <remarks>Not to be cancelled: a chunk that has begun is finished, so that the totals told are what is recorded.</remarks>
    public static async Task<IReadOnlyList<AnsweredRow>> TakeAsync(BulkRecorder bulk, IReadOnlyList<ReadRow> chunk, DateTimeOffset now, bool keep)
    {
        var arrival = new Arrival(Device, now, null);
        Submission[] submissions = [.. chunk.Where(r => r.Command is not null).Select(r => new Submission(r.Kind, r.Command!, arrival))];
        var next = new Queue<Answer>(keep ? await bulk.TakeAsync(submissions, CancellationToken.None) : await bulk.TryAsync(submissions, CancellationToken.None));
        return
        [
            .. chunk.Select(row => row.Command is null ? new AnsweredRow(row, null, row.Bad) : Answered(row, next.Dequeue())),
        ];
    }

    private static AnsweredRow Answered(ReadRow row, Answer answer) => new(row, answer, [.. Complaints(row, answer)]);

    private static IEnumerable<BadCell> Complaints(ReadRow row, Answer answer) => answer.Outcome switch
    {
        Outcome.Refused => answer.Refusals.Select(row.Told),
        Outcome.Conflict =>
        [
            new BadCell(
                row.File, row.Line, SheetHead.Key, row.Key!,
                $"this row was imported before with other content, which stands. To correct that, give this row a key of its own, amends_key \"{row.Key}\" and entered_at, the time of the correction"),
        ],
        _ => [],
    };
}
