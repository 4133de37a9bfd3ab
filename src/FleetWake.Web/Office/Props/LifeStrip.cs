using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Props;

/// <summary>A stretch of a prop's life on the strip.</summary>
/// <param name="Left">Where it begins, of a thousand.</param>
/// <param name="Width">How wide it is, of a thousand.</param>
/// <param name="AtShop">It was at a shop; else on a boat.</param>
/// <param name="Says">What it is, in words.</param>
public sealed record LifeStretch(double Left, double Width, bool AtShop, string Says);

/// <summary>A prop's life as a strip: on boats, at shops, and where it was struck.</summary>
/// <param name="From">Its first day on record.</param>
/// <param name="To">Today, or the day it was retired.</param>
/// <param name="Stretches">On boats and at shops, in order.</param>
/// <param name="Strikes">Where it was struck, of a thousand.</param>
public sealed record LifeStrip(DateOnly From, DateOnly To, IReadOnlyList<LifeStretch> Stretches, IReadOnlyList<(double At, string Says)> Strikes)
{
    /// <summary>Nothing on the strip is narrower than this, of a thousand: a day's mounting would not be seen.</summary>
    private const double Least = 4;

    /// <summary>The strip of a prop; null when it was never on a boat nor at a shop, or all of it is of one day.</summary>
    public static LifeStrip? Of(PropView view, DateOnly today, Measures measures)
    {
        var t = PageTexts.English;
        var end = view.Life.Place is { Standing: PropStanding.Retired or PropStanding.GivenBack, Since: { } gone } ? gone : today;
        var stays = Shops(view.Facts, end).ToList();
        var days = view.Life.Mountings.Select(m => m.From).Concat(stays.Select(s => s.From)).Concat(view.Life.Registered is { } r ? [r.Entry.Date()] : []).ToList();
        if (view.Life.Mountings.Count + stays.Count == 0 || days.Min() is var from && from >= end) return null;
        double At(DateOnly day) => Math.Clamp(1000.0 * (day.DayNumber - from.DayNumber) / (end.DayNumber - from.DayNumber), 0, 1000);
        LifeStretch Stretch(DateOnly a, DateOnly b, bool shop, string what)
        {
            var width = Math.Max(Least, At(b) - At(a));
            return new LifeStretch(Math.Min(At(a), 1000 - width), width, shop, $"{what}, {measures.Date(a)} – {measures.Date(b)}");
        }

        return new LifeStrip(
            from,
            end,
            [
                .. view.Life.Mountings.Select(m => Stretch(m.From, m.To ?? end, false, Reports.Pictures.Phrases.Plain(view.Names.GetValueOrDefault(m.Boat, m.Boat)))),
                .. stays.Select(s => Stretch(s.From, s.To, true, t.With("prop.strip-shop", ("shop", Reports.Pictures.Phrases.Plain(s.Shop))))),
            ],
            [.. view.Strikes.Values.SelectMany(s => s).Select(s => (At(s.Entry.Date()), $"{measures.Date(s.Entry.Date())}: {Words.Prose(s.Severity)}"))]);
    }

    private static IEnumerable<(string Shop, DateOnly From, DateOnly To)> Shops(IReadOnlyList<IFact> facts, DateOnly end)
    {
        for (var i = 0; i < facts.Count; i++)
        {
            if (facts[i] is PropSentToShop sent)
                yield return (sent.Shop, sent.Entry.Date(), facts.Skip(i + 1).FirstOrDefault(f => f is PropBackFromShop or PropStored or PropIssued or PropRetired)?.Entry.Date() ?? end);
        }
    }
}
