using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Findings;

/// <summary>The wear of every mounting of a boat, of those that ended too: a finding tells the present ones only.</summary>
public static class EveryMounting
{
    /// <summary>Each mounting in order, with its wear; the present ones are told as the boat's finding tells them.</summary>
    /// <param name="history">The boat's history.</param>
    /// <param name="priors">What its fleet has shown; what the trade expects when left out.</param>
    public static IEnumerable<(MountingSpan Span, MountingFinding Wear)> Of(BoatHistory history, FleetPriors? priors = null)
    {
        var present = Assess.Boat(history, priors).Positions.Select(p => p.Mounting).OfType<MountingFinding>().ToDictionary(m => m.Mounting, StringComparer.Ordinal);
        return history.Mountings.Select(span => (span, present.TryGetValue(span.Id, out var wear) ? wear : Assess.Mounting(history, span, priors)));
    }
}
