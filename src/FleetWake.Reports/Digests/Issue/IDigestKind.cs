using FleetWake.Logbook.Office;
using FleetWake.Store.Operators;

namespace FleetWake.Reports.Digests.Issue;

/// <summary>A kind of digest that goes out by a schedule. When, to whom and how often is the business of <see cref="DigestIssue"/>; a kind tells what.</summary>
public interface IDigestKind
{
    /// <summary>Its name in ledgers, subscriptions and file names, e.g. <c>weekly-wear</c>.</summary>
    string Digest { get; }

    /// <summary>The same in records.</summary>
    ScheduledDigest Scheduled { get; }

    /// <summary>Puts an edition together.</summary>
    Task<Composed> ComposeAsync(Wanted wanted, CancellationToken ct);
}

/// <summary>An edition that is due.</summary>
/// <param name="Operator">The operator.</param>
/// <param name="Dock">The dock whose readers it is for; null for readers of the whole fleet.</param>
/// <param name="Period">The period, e.g. <c>2026-W47</c>.</param>
/// <param name="Day">The day as of which it speaks, by the calendar of the dock (of the office for the whole fleet), whatever clock its schedule has: today, or of one that was missed the day on which it was due.</param>
/// <param name="Late">It was missed and is made up for: what happened after its day is left out.</param>
/// <param name="Since">The day of the edition before it, from which changes count; null for the first.</param>
/// <param name="SinceAt">The moment of that edition, from which records count as new; null where it told of its whole day, as one that was made up for does.</param>
public sealed record Wanted(OperatorCard Operator, string? Dock, string Period, DateOnly Day, bool Late, DateOnly? Since, DateTimeOffset? SinceAt = null);

/// <summary>What became of an edition.</summary>
public abstract record Composed
{
    /// <summary>Nothing is on record yet that it could speak of: it is asked for again.</summary>
    public sealed record NotYet : Composed;

    /// <summary>There is nothing to tell, and nobody is to be told that: the period is settled without a message.</summary>
    public sealed record NothingToTell : Composed;

    /// <summary>It can go out.</summary>
    /// <param name="Draft">The edition as data.</param>
    /// <param name="Boats">How many boats it tells of; 0 where that is not counted.</param>
    public sealed record Ready(DigestDraft Draft, int Boats = 0) : Composed;
}
