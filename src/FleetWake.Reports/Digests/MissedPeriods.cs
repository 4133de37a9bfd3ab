using FleetWake.Logbook.Entries;
using FleetWake.Logbook.People;

namespace FleetWake.Reports.Digests;

/// <summary>Weeks whose digest should have gone out while nothing ran.</summary>
public static class MissedPeriods
{
    /// <summary>A longer absence is told by its last weeks: who was away for years needs no list of them.</summary>
    public const int Most = 53;

    /// <summary>The weeks between the last digest issued and the one now due that somebody was to receive, oldest first.</summary>
    /// <param name="office">The operator's own log.</param>
    /// <param name="issued">Periods issued.</param>
    /// <param name="due">The newest period that is due.</param>
    /// <param name="zone">Zone of the office.</param>
    /// <param name="schedule">When digests go out.</param>
    public static IReadOnlyList<string> Of(FactLog office, IReadOnlyCollection<string> issued, string due, TimeZoneInfo zone, DigestSchedule schedule)
    {
        // Later ones were issued by a clock that ran ahead; they say nothing of the weeks before.
        var last = issued.Where(p => string.CompareOrdinal(p, due) < 0).Max(StringComparer.Ordinal);
        if (last is null) return [];
        var facts = Effective.Of(office.Facts).Facts;
        return [.. WeekPeriod.Between(last, due).Where(p => HadReader(facts, WeekPeriod.DueMoment(p, zone, schedule))).TakeLast(Most)];
    }

    private static bool HadReader(IReadOnlyList<IFact> facts, DateTimeOffset at)
    {
        var readers = new HashSet<string>(StringComparer.Ordinal);
        foreach (var fact in facts.Where(f => f.Entry.Happened() <= at))
        {
            if (fact is RecipientSubscribed { Digest: WeeklyWear.Digest } came) readers.Add(came.Recipient);
            else if (fact is RecipientUnsubscribed { Digest: WeeklyWear.Digest } left) readers.Remove(left.Recipient);
        }

        return readers.Count > 0;
    }
}
