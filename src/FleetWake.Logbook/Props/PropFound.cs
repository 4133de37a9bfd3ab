using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>Notice on the prop's stream that it was found fitted on a boat; shares the entry id of the boat's fact, which is the truth of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
[StoredAs("prop_found", 1)]
public sealed record PropFound(Entry Entry, string Prop, string Boat, Position Position) : IFact;
