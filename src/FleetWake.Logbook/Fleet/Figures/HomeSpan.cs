using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Office;

namespace FleetWake.Logbook.Fleet.Figures;

/// <summary>A time that a boat was at home at one dock, over one bottom and in one water.</summary>
/// <param name="From">The entry that began it; null for the first home, which holds whatever was told before.</param>
/// <param name="To">The entry that ended it; null while it lasts.</param>
/// <param name="Dock">Id of the dock; null while the boat is not registered.</param>
/// <param name="Water">The water; null while the boat is not registered.</param>
/// <param name="Bottom">The bottom: the boat's as told with its home, else the dock's, else not known.</param>
internal sealed record HomeSpan(Entry? From, Entry? To, string? Dock, WaterType? Water, BottomKind Bottom)
{
    /// <summary>The homes of a boat in order, one at least.</summary>
    public static IReadOnlyList<HomeSpan> Of(BoatHistory boat, OfficeRecord office)
    {
        if (boat.Registered is not { } registered) return [new HomeSpan(null, null, null, null, BottomKind.Unknown)];
        var moves = boat.Facts.OfType<BoatRehomed>().ToList();
        return
        [
            .. Enumerable.Range(0, moves.Count + 1).Select(i =>
            {
                var home = BoatHome.Of(registered, moves.Take(i))!;
                return new HomeSpan(
                    i == 0 ? null : moves[i - 1].Entry,
                    i == moves.Count ? null : moves[i].Entry,
                    home.Dock,
                    home.Water,
                    Known(home.Bottom) ?? Known(office.Docks.FirstOrDefault(d => d.Dock == home.Dock)?.Bottom) ?? BottomKind.Unknown);
            }),
        ];
    }

    /// <summary>Whether an entry lies in it.</summary>
    public bool Holds(IComparer<Entry> order, Entry entry) =>
        (From is null || order.Compare(From, entry) <= 0) && (To is null || order.Compare(entry, To) < 0);

    private static BottomKind? Known(BottomKind? bottom) => bottom == BottomKind.Unknown ? null : bottom;
}
