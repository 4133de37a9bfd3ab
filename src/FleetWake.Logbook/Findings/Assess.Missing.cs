using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Findings;

/// <content>What is missing at a position.</content>
public static partial class Assess
{
    /// <summary>
    /// A position that the registration does not name and that no engine stays at comes from a record that was typed
    /// wrong: a strike, or an engine that was moved to where it hangs.
    /// </summary>
    private static bool NotOnBoat(BoatHistory history, Position position)
    {
        if (history.Registered?.Positions.Contains(position) == true) return false;
        var last = history.Engines.LastOrDefault(e => e.Position == position);
        return last is null || (last.To is not null && history.Engines.Any(e => e.To is null && e.Engine == last.Engine));
    }

    /// <summary>Since when no engine hangs there; null while one does, or when nobody ever told of one.</summary>
    private static DateOnly? EngineOffOn(BoatHistory history, Position position) =>
        OffOn(history, position, history.Engines.Where(e => e.Position == position).Select(e => e.To), history.Facts.OfType<EngineRemoved>());

    /// <summary>Since when no prop is on; null while one is, or when nobody ever told of one.</summary>
    private static DateOnly? PropOffOn(BoatHistory history, Position position) =>
        OffOn(history, position, history.Mountings.Where(m => m.Fitted.Position == position).Select(m => m.To), history.Facts.OfType<PropRemoved>());

    private static DateOnly? OffOn(BoatHistory history, Position position, IEnumerable<Entry?> ends, IEnumerable<IAtPosition> removals)
    {
        var ended = ends.ToList();
        if (ended.Contains(null)) return null;
        return ended.OfType<Entry>().Concat(removals.Where(r => r.Position == position).Select(r => r.Entry)).Order(history.Order).LastOrDefault()?.Date();
    }
}
