namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>A mounting among those of its fleet.</summary>
/// <param name="Id">Its name, unlike every other in the fleet.</param>
/// <param name="Boat">Its boat, or null when not known: then it shares nothing with another mounting but its group.</param>
/// <param name="Material">Material of the prop, such as aluminium.</param>
/// <param name="Water">Water of the boat, such as silty.</param>
/// <param name="Series">Its history.</param>
public sealed record FleetMember(string Id, string? Boat, string Material, string Water, DriftSeries Series);
