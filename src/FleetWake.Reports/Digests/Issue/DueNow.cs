using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;
using FleetWake.Logbook.Schedules;

namespace FleetWake.Reports.Digests.Issue;

/// <summary>What of one digest is due, of the periods that have come. Pure.</summary>
/// <param name="Newest">The newest period.</param>
/// <param name="Missed">Earlier ones that should have gone out while nothing ran, oldest first.</param>
/// <param name="Since">The day of the edition before all these; null when there was none.</param>
/// <param name="SinceAt">The moment at which that one was issued; null where it was made up for later, and so told of its whole day.</param>
public sealed record DueNow(Occasion Newest, IReadOnlyList<Occasion> Missed, DateOnly? Since, DateTimeOffset? SinceAt)
{
    /// <summary>A longer absence is told by its last periods: who was away for years needs no list of them.</summary>
    public const int Most = 53;

    /// <summary>
    /// A digest that was issued so much later than it is now was issued by a clock that ran ahead, before its day had come: it goes out anew.
    /// A clock that is put back by less sends nothing twice.
    /// </summary>
    public static readonly TimeSpan Ahead = TimeSpan.FromDays(2);

    /// <summary>What is due; null when the newest period has its digest.</summary>
    /// <param name="line">When it goes out.</param>
    /// <param name="issued">Periods issued, each with when by the clock that issued it.</param>
    /// <param name="readers">When it had readers.</param>
    /// <param name="now">The moment.</param>
    public static DueNow? Of(ScheduleLine line, IReadOnlyDictionary<string, DateTimeOffset> issued, ReaderSpans readers, DateTimeOffset now)
    {
        List<string> sent = [.. issued.Where(i => i.Value - now <= Ahead).Select(i => i.Key)];
        var settled = sent.Concat(readers.PassedOver(now)).ToHashSet(StringComparer.Ordinal);
        Occasion? newest = null, before = null, after = null;
        var missed = new List<Occasion>();
        foreach (var occasion in line.Backwards(now))
        {
            if (settled.Contains(occasion.Period))
            {
                if (newest is null) return null;
                before = occasion;
                break;
            }

            if (newest is null) newest = occasion;
            else if (readers.Had(occasion.At)) missed.Add(occasion);
            if (missed.Count > Most) break;
            after = occasion;
        }

        // Before the first digest none was missed, nor by what a clock that ran ahead issued.
        if (newest is null) return null;
        if (before is null && !sent.Exists(p => Periods.FirstDay(p) is { } first && first < newest.Day)) missed.Clear();
        missed.Reverse();
        return new DueNow(newest, [.. missed.TakeLast(Most)], before is null ? null : line.DayAt(before.At), Moment(before, after, issued, now));
    }

    /// <summary>When an edition was issued that told of all that was on record; null for one that was made up for after the next was due, passed over, or issued by a clock that ran ahead.</summary>
    private static DateTimeOffset? Moment(Occasion? before, Occasion? after, IReadOnlyDictionary<string, DateTimeOffset> issued, DateTimeOffset now) =>
        before is not null && issued.TryGetValue(before.Period, out var at) && at >= before.At && at <= now && at < after?.At ? at : null;
}

/// <summary>When a digest of a dock, or of the whole fleet, had readers, as the operator's own log tells.</summary>
public sealed class ReaderSpans
{
    private readonly IReadOnlyList<(DateTimeOffset From, bool Any)> changes;
    private readonly IReadOnlyList<DigestPassedOver> passed;

    private ReaderSpans(IReadOnlyList<(DateTimeOffset, bool)> changes, IReadOnlyList<DigestPassedOver> passed) => (this.changes, this.passed) = (changes, passed);

    /// <summary>Reads them out of the log of the operator's stream.</summary>
    /// <param name="office">The log.</param>
    /// <param name="digest">The digest.</param>
    /// <param name="dock">The dock; null for the whole fleet.</param>
    public static ReaderSpans Of(FactLog office, string digest, string? dock)
    {
        var facts = Effective.Of(office.Facts).Facts;
        var readers = new HashSet<string>(StringComparer.Ordinal);
        var changes = new List<(DateTimeOffset, bool)>();
        foreach (var fact in facts)
        {
            if (fact is RecipientSubscribed came && came.Digest == digest && came.Dock == dock) readers.Add(came.Recipient);
            else if (fact is RecipientUnsubscribed left && left.Digest == digest) readers.Remove(left.Recipient);
            else continue;
            changes.Add((fact.Entry.Happened(), readers.Count > 0));
        }

        return new ReaderSpans(changes, [.. facts.OfType<DigestPassedOver>().Where(p => p.Digest == digest && p.Dock == dock)]);
    }

    /// <summary>Whether there was a reader at a moment.</summary>
    public bool Had(DateTimeOffset at) => changes.LastOrDefault(c => c.From <= at).Any;

    /// <summary>Periods that were passed over. What a clock that ran ahead passed over is no longer passed over once it was set back.</summary>
    public IEnumerable<string> PassedOver(DateTimeOffset now) => passed.Where(p => p.Entry.Happened() <= now).Select(p => p.Period);
}
