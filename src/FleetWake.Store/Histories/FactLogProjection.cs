using FleetWake.Logbook.Entries;
using JasperFx.Events;
using Marten.Events.Aggregation;

namespace FleetWake.Store.Histories;

/// <summary>Hands each stream to the logbook's own fold. Public and partial because Marten's source generator asks for it.</summary>
public sealed partial class FactLogProjection : SingleStreamProjection<FactLog, string>
{
    /// <inheritdoc/>
    public override FactLog? Evolve(FactLog? snapshot, string id, IEvent e) =>
        e.Data is IFact fact ? (snapshot ?? FactLog.Empty(id)).Evolve(fact) : snapshot;
}
