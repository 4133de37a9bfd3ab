using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Mail;

/// <summary>Alerts are handed to an address of the operator's as well, from now on.</summary>
/// <param name="Entry">The stamp, which says who set it.</param>
/// <param name="Host">The host alone: the rest of the address may hold a secret.</param>
[StoredAs("alert_hook_set", 1)]
public sealed record AlertHookSet(Entry Entry, string Host) : IFact;

/// <summary>Alerts are handed to no address any more.</summary>
/// <param name="Entry">The stamp, which says who ended it.</param>
[StoredAs("alert_hook_ended", 1)]
public sealed record AlertHookEnded(Entry Entry) : IFact;
