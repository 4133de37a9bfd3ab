using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Findings;

/// <content>Mountings that have ended, which a boat's finding leaves out.</content>
public static partial class Assess
{
    /// <summary>The wear of any mounting of a history, with the engine that turned it.</summary>
    /// <param name="history">The boat's history.</param>
    /// <param name="mounting">One of its mountings.</param>
    /// <param name="priors">What its fleet has shown; what the trade expects when left out.</param>
    public static MountingFinding Mounting(BoatHistory history, MountingSpan mounting, FleetPriors? priors = null)
    {
        var (engine, meter) = AssessMounting.Hung(history, mounting);
        return AssessMounting.Of(history, mounting, engine, meter, priors ?? FleetPriors.Trade);
    }
}
