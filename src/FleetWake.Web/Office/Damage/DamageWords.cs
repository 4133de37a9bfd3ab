using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Damage;

/// <summary>What somebody saw who looked at a prop after a damage, in words.</summary>
internal static class DamageWords
{
    public static string Seen(IFact look)
    {
        var t = PageTexts.English;
        return look switch
        {
            Inspected i => t.With("claims.inspected", ("verdict", Words.Prose(i.Verdict)), ("marks", i.Marks.Count == 0 ? t["claims.no-marks"] : string.Join(", ", i.Marks.Select(m => Words.Prose(m))))),
            LookedOver l => t.With("claims.looked", ("when", t["claims.look-" + Words.Of(l.Moment)]), ("seen", Words.Prose(l.Seen))),
            _ => "",
        };
    }
}
