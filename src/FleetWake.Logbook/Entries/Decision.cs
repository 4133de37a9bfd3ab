namespace FleetWake.Logbook.Entries;

/// <summary>What comes of holding a record against the rules: facts to keep, or refusals with their fields.</summary>
public abstract record Decision
{
    private Decision()
    {
    }

    /// <summary>The record is kept.</summary>
    /// <param name="Facts">The facts with their streams; those of one record share its entry id.</param>
    /// <param name="References">What the record speaks of; a reference that is not registered yet holds the record.</param>
    public sealed record Keep(IReadOnlyList<Placed> Facts, IReadOnlyList<Reference> References) : Decision;

    /// <summary>The record cannot be true of anything.</summary>
    /// <param name="Refusals">Each reason, with its field.</param>
    public sealed record Refuse(IReadOnlyList<Refusal> Refusals) : Decision;
}

/// <summary>A fact and the stream it belongs to.</summary>
public sealed record Placed(string Stream, IFact Fact);

/// <summary>A field that names a boat, engine or prop, and that thing's stream.</summary>
/// <param name="Field">JSON pointer to the field, e.g. <c>/boat</c>.</param>
/// <param name="Stream">Stream of what is named.</param>
public sealed record Reference(string Field, string Stream);

/// <summary>Why a record is refused: where, a stable reason and how to mend it.</summary>
/// <param name="Field">JSON pointer to the field, e.g. <c>/runs/0/speed</c>.</param>
/// <param name="Reason">Stable code, lower snake case.</param>
/// <param name="Message">What is wrong and how to mend it, for a person.</param>
public sealed record Refusal(string Field, string Reason, string Message);
