namespace FleetWake.Logbook.Entries;

/// <summary>A record is taken back. It stays in the history; nothing derived counts it any more. Retracting an amendment restores the earlier record.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Retracts">Id of the entry taken back.</param>
/// <param name="Why">Why.</param>
[StoredAs("retracted", 1)]
public sealed record Retracted(Entry Entry, Guid Retracts, RetractionReason Why) : IFact;

/// <summary>Why a record is taken back.</summary>
public enum RetractionReason
{
    /// <summary>It was recorded on the wrong boat, engine or prop.</summary>
    WrongSubject,

    /// <summary>A value was typed wrong.</summary>
    TypedWrong,

    /// <summary>The same thing was recorded twice.</summary>
    RecordedTwice,

    /// <summary>It did not happen.</summary>
    DidNotHappen,
}

/// <summary>Takes a record back.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Retracts">Id of the entry to take back.</param>
/// <param name="Why">Why.</param>
/// <param name="Boat">The boat the entry was about; exactly one of boat, engine, prop, part and office is given.</param>
/// <param name="Engine">The engine the entry was about.</param>
/// <param name="Prop">The prop the entry was about.</param>
/// <param name="Part">The small part the entry was about.</param>
/// <param name="Office">True when the entry was one of the office: a dock, a person, a price, a rule.</param>
public sealed record Retract(
    Stamp? Entry,
    Guid? Retracts,
    [property: OneOf(typeof(RetractionReason))] string? Why,
    string? Boat = null,
    string? Engine = null,
    string? Prop = null,
    string? Part = null,
    bool? Office = null) : ICommand<Retract>
{
    /// <inheritdoc/>
    public static string Kind => "retracted";

    /// <inheritdoc/>
    public static Retract Example => new(Examples.At(13, "2026-05-21T08:00:00"), Examples.Id(10), "did_not_happen", Examples.Boat);

    /// <inheritdoc/>
    public static string Summary => "Takes a record back; it stays in the history and counts no more.";

    /// <inheritdoc/>
    public static Decision Decide(Retract command, Arrival arrival)
    {
        var check = new Check();
        var entry = check.Entry(command.Entry, arrival);
        var retracts = check.Required(command.Retracts, "/retracts", "give the id of the entry to take back");
        if (command.Retracts == Guid.Empty)
            check.Refuse("/retracts", "empty_id", "an all-zero UUID is no entry id");
        else if (command.Retracts is { } taken && taken == command.Entry?.Id)
            check.Refuse("/retracts", "retracts_itself", "a retraction has an id of its own: give that of the entry to take back");
        var why = check.OneOf<RetractionReason>(command.Why, "/why");
        if (command.Entry?.Amends is not null)
            check.Refuse("/entry/amends", "cannot_amend", "a retraction is not amended: retract the retraction instead, which restores the record");
        var office = command.Office is true;
        string?[] named = [command.Boat, command.Engine, command.Prop, command.Part];
        if (named.Count(n => n is not null) + (office ? 1 : 0) != 1)
            check.Refuse("/boat", "one_subject", "give exactly one of boat, engine, prop, part and office: the one whose record is taken back");
        var stream =
            command.Engine is not null ? StreamName.Engine(check.Id(command.Engine, "/engine"))
            : command.Prop is not null ? StreamName.Prop(check.Id(command.Prop, "/prop"))
            : command.Part is not null ? StreamName.Part(check.Id(command.Part, "/part"))
            : command.Boat is not null ? StreamName.Boat(check.Id(command.Boat, "/boat"))
            : StreamName.Operator;
        return check.Decide(() => new Decision.Keep([new Placed(stream, new Retracted(entry!, retracts, why))], []));
    }
}
