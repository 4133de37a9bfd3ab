using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>Notice on the prop's stream that it was mounted on a boat; shares the entry id of the boat's fact, which is the truth of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
[StoredAs("prop_issued", 1)]
public sealed record PropIssued(Entry Entry, string Prop, string Boat, Position Position) : IFact;

/// <summary>Notice on the prop's stream that it came off a boat; shares the entry id of the boat's fact, which is the truth of it.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Prop">The tag.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
[StoredAs("prop_returned", 1)]
public sealed record PropReturned(Entry Entry, string Prop, string Boat, Position Position) : IFact;
