using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Findings;

/// <content>Mountings that have ended, which a boat's finding leaves out.</content>
public static partial class Assess
{
    /// <summary>The wear of any mounting of a history, with the engine that turned it.</summary>
    public static MountingFinding Mounting(BoatHistory history, MountingSpan mounting)
    {
        var hung = history.EngineOf(mounting);
        return AssessMounting.Of(
            history, mounting, hung is null ? null : Card(history, hung.Engine), hung is null ? null : history.Meters.GetValueOrDefault(hung.Engine));
    }
}
