using FleetWake.Logbook.Entries;
using JasperFx.Events;
using Marten.Events.Aggregation;

namespace FleetWake.Store.Histories;

/// <summary>
/// Hands each stream to the logbook's own fold. Public and partial because Marten's source generator asks for it. The fleet's own
/// stream is left out: each of its facts is large and takes the place of the one before, so nobody asks for all of them.
/// </summary>
public sealed partial class FactLogProjection : SingleStreamProjection<FactLog, string>
{
    /// <inheritdoc/>
    public override FactLog? Evolve(FactLog? snapshot, string id, IEvent e) =>
        id != StreamName.Fleet && e.Data is IFact fact ? (snapshot ?? FactLog.Empty(id)).Evolve(fact) : snapshot;
}
