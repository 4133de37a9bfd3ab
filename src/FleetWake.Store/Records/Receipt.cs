using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Records;

/// <summary>Proof that an entry was taken: it makes a repeat harmless and catches an id used twice.</summary>
/// <param name="Id">The entry id.</param>
/// <param name="ContentHash">Hash of the canonical content and the schema version.</param>
/// <param name="Answer">What the device was answered.</param>
/// <param name="References">What the record speaks of; says whether a held record is still held.</param>
public sealed record Receipt(Guid Id, string ContentHash, Answer Answer, IReadOnlyList<Reference> References)
{
    /// <summary>The record was held when it was taken; what held it may have arrived since.</summary>
    [JsonIgnore]
    public bool IsHeld => Answer.Outcome == Outcome.Held;

    private static readonly JsonSerializerOptions Canonical = new(LogbookJson.Options) { Converters = { new PlainDecimal() } };

    /// <summary>Hash of a record's content as understood: member order, spacing and number spelling do not matter, nor the way it came.</summary>
    public static string Hash(RecordKind kind, ICommand command)
    {
        var content = JsonSerializer.Serialize(command, kind.CommandType, Canonical);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{RecordKind.SchemaVersion}\n{kind.Name}\n{content}")));
    }

    /// <summary>The answer to a record that comes with this entry id again.</summary>
    /// <param name="hash">Hash of its content; null when it is refused by itself.</param>
    /// <param name="registered">Whether the thing of a stream is registered now: a record that was held may not be any more.</param>
    public Answer Again(string? hash, Func<string, bool> registered)
    {
        if (ContentHash != hash) return Conflict(Id);
        if (!IsHeld) return Answer with { Repeat = true };
        var held = Registrations.Holding(References, registered);
        return Answer with { Repeat = true, Held = held, Outcome = held.Count > 0 ? Outcome.Held : Outcome.Recorded };
    }

    /// <summary>An amount without the zeros at its end, which a decimal keeps as it was written: 10.50 is 10.5.</summary>
    private sealed class PlainDecimal : JsonConverter<decimal>
    {
        public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => reader.GetDecimal();

        public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(value / 1.0000000000000000000000000000m);
    }

    /// <summary>The answer to an entry id that was used before for other content.</summary>
    internal static Answer Conflict(Guid id) => new(
        id,
        Outcome.Conflict,
        false,
        [],
        [],
        [new Refusal("/entry/id", "id_used", "this entry id was used before for other content: give a changed record an id of its own, and amend the earlier one if it was wrong")]);
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

    /// <summary>It came from a dock's phone that was revoked: it waits for a person to let it through. No other sender is answered so.</summary>
    KeptBack,
}
