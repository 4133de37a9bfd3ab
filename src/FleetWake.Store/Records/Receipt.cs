using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Records;

/// <summary>Proof that an entry was taken: it makes a repeat harmless and catches an id used twice.</summary>
/// <param name="Id">The entry id.</param>
/// <param name="ContentHash">Hash of the canonical content and the schema version.</param>
/// <param name="Answer">What the device was answered.</param>
/// <param name="References">What the record speaks of; says whether a held record is still held.</param>
public sealed record Receipt(Guid Id, string ContentHash, Answer Answer, IReadOnlyList<Reference> References)
{
    /// <summary>Hash of a record's content as understood: member order, spacing and number spelling do not matter, nor the way it came.</summary>
    public static string Hash(RecordKind kind, ICommand command)
    {
        var content = JsonSerializer.Serialize(command, kind.CommandType, LogbookJson.Options);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{RecordKind.SchemaVersion}\n{kind.Name}\n{content}")));
    }
}

/// <summary>What a device is told about one record.</summary>
/// <param name="Id">The entry id, when the record had one.</param>
/// <param name="Outcome">What became of it.</param>
/// <param name="Repeat">It had been taken before; this is the answer of then.</param>
/// <param name="Held">References that are not registered yet, each with its field.</param>
/// <param name="Contradictions">Questions that this record raised.</param>
/// <param name="Refusals">Why it was refused, each with its field.</param>
public sealed record Answer(
    Guid? Id,
    Outcome Outcome,
    bool Repeat,
    IReadOnlyList<Refusal> Held,
    IReadOnlyList<Contradiction> Contradictions,
    IReadOnlyList<Refusal> Refusals);

/// <summary>What became of a record.</summary>
public enum Outcome
{
    /// <summary>It is kept.</summary>
    Recorded,

    /// <summary>It is kept, and waits for something it names to be registered.</summary>
    Held,

    /// <summary>It cannot be true of anything, and is not kept.</summary>
    Refused,

    /// <summary>Its entry id was used before for other content; it is not kept.</summary>
    Conflict,
}
