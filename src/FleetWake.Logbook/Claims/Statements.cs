using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;
using FleetWake.Logbook.Strikes;

namespace FleetWake.Logbook.Claims;

/// <summary>The statement of a claimed damage.</summary>
internal static class Statements
{
    public static DamageStatement Of(ClaimOpened claim, StrikeReported? strike, IReadOnlyList<IFact> facts)
    {
        // The strike is often told minutes before the claim, and the look that found it may stand between: what counts is
        // what was known before the damage, not before the claim.
        IFact found = strike ?? (IFact)claim;
        var before = facts.TakeWhile(f => f.Entry.Id != found.Entry.Id).OfType<IAtPosition>().Where(f => f.Position == claim.Position).ToList();
        // A look at the return of this very hire is how the damage was found, not how it was before.
        var look = before.FindLastIndex(f => Seen(f) is not null && !(f is LookedOver { Moment: LookMoment.AfterHire } l && l.Hire == claim.Hire));
        var earlier = look < 0 ? null : new EarlierLook(before[look].Entry.Id, before[look].Entry.Date(), before[look].Entry.By, Seen(before[look])!);
        var between = before.Skip(look + 1).OfType<StrikeReported>().Count();
        return new DamageStatement(found.Entry.Date(), strike?.Object, strike?.Severity, earlier, between, Text(claim, strike, found, earlier, between));
    }

    /// <summary>What somebody who had the prop in view saw of it; null for records that are no look.</summary>
    private static string? Seen(IFact fact) => fact switch
    {
        Inspected i => $"an inspection that said {Words.Prose(i.Verdict)} and saw {Marks(i.Marks)}",
        LookedOver l => $"a short look {When(l.Moment)} that saw {Words.Prose(l.Seen)}",
        PropMounted m => $"the fitting of prop {m.Prop}",
        _ => null,
    };

    private static string When(LookMoment moment) => moment switch
    {
        LookMoment.BeforeHire => "before a hire",
        LookMoment.AfterHire => "after a hire",
        _ => "at the dock",
    };

    private static string Marks(IReadOnlyList<InspectionMark> marks) =>
        marks.Count == 0 ? "no marks" : string.Join(", ", marks.Select(m => Words.Prose(m)));

    private static string Text(ClaimOpened claim, StrikeReported? strike, IFact found, EarlierLook? earlier, int between)
    {
        var damage = strike is not null ? $": {Words.Prose(strike.Severity)}, struck {Struck(strike.Object)}"
            : claim.Strike is not null ? "; the strike that it names is not on record"
            : "; no strike is on record";
        var last = earlier is null
            ? "No earlier look at it is on record."
            : $"The last look before was {earlier.Seen}, on {earlier.On:yyyy-MM-dd}.";
        var since = earlier is null ? "before" : "since";
        var others = between switch
        {
            0 => "",
            1 => $" One other strike there is on record {since}.",
            _ => $" {between} other strikes there are on record {since}.",
        };
        return $"Found at return of hire {claim.Hire} on {found.Entry.Date():yyyy-MM-dd}{damage}. {last}{others}";
    }

    private static string Struck(StruckObject what) => what == StruckObject.Unknown ? "by something unknown" : Words.Prose(what);
}
