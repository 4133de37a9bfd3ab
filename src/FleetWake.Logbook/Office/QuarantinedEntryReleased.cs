using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Office;

/// <summary>Somebody in the office let an entry through that had been kept back, as from a device that was revoked.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Released">Id of the entry that was let through.</param>
[StoredAs("quarantined_entry_released", 1)]
public sealed record QuarantinedEntryReleased(Entry Entry, Guid Released) : IFact;

/// <summary>Lets an entry through that had been kept back.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Released">Id of the entry.</param>
public sealed record ReleaseQuarantinedEntry(Stamp? Entry, Guid? Released) : ICommand<ReleaseQuarantinedEntry>
{
    /// <inheritdoc/>
    public static string Kind => "quarantined_entry_released";

    /// <inheritdoc/>
    public static ReleaseQuarantinedEntry Example => new(Examples.At(247, "2026-11-02T09:00:00"), Examples.Id(249));

    /// <inheritdoc/>
    public static string Summary => "Lets an entry through that had been kept back.";

    /// <inheritdoc/>
    public static Decision Decide(ReleaseQuarantinedEntry command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var released = check.EntryId(command.Released, "/released", "give the id of the entry that is let through");
        return check.Decide(() => new Decision.Keep([new Placed(StreamName.Operator, new QuarantinedEntryReleased(entry!, released))], []));
    }
}
