using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Hire;
using FleetWake.Logbook.Season;

namespace FleetWake.Logbook.Findings;

/// <summary>Whether a boat is laid up, held back or gone.</summary>
internal static class AssessSeason
{
    /// <summary>The last lay-up, with the positions that nobody inspected since.</summary>
    public static LayUpCard? LayUp(BoatHistory history)
    {
        var (first, last, relaunched) = Season(history);
        if (first is null) return null;
        var positions = history.Registered?.Positions ?? [.. history.Engines.Select(e => e.Position).Distinct().Order()];
        bool Looked(Position p) => history.Inspections.Any(i => i.Position == p && history.Order.Compare(i.Entry, first.Entry) > 0);
        return new LayUpCard(first.Entry.Date(), last!.RelaunchOn, relaunched?.Entry.Date(), [.. positions.Where(p => !Looked(p))]);
    }

    /// <summary>The entry with which the last lay-up began; null when it was never laid up.</summary>
    public static Entry? LaidUpAt(BoatHistory history) => Season(history).First?.Entry;

    private static (LaidUp? First, LaidUp? Last, BoatRelaunched? Relaunched) Season(BoatHistory history)
    {
        // Told twice that it is laid up, it was laid up the first time, and the later word on the relaunch counts.
        LaidUp? first = null;
        LaidUp? last = null;
        BoatRelaunched? relaunched = null;
        foreach (var fact in history.Facts)
        {
            if (fact is LaidUp laidUp) (first, last, relaunched) = (relaunched is null ? first ?? laidUp : laidUp, laidUp, null);
            if (fact is BoatRelaunched again && first is not null) relaunched ??= again;
        }

        return (first, last, relaunched);
    }

    /// <summary>Somebody took it out of hire, and nobody returned it since.</summary>
    public static HoldCard? Hold(BoatHistory history) =>
        history.Facts.LastOrDefault(f => f is TakenOutOfHire or ReturnedToHire) is TakenOutOfHire held ? new HoldCard(held.Entry.Date(), held.Why) : null;

    /// <summary>It left the fleet.</summary>
    public static RetiredCard? Retired(BoatHistory history) =>
        history.Facts.OfType<BoatRetired>().LastOrDefault() is { } retired ? new RetiredCard(retired.Entry.Date(), retired.Why) : null;
}
