using FleetWake.Logbook.Entries;
using FleetWake.Web.Frame;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Forms;

/// <summary>A form that was not taken: what was typed, and why not. A page shows it beside the fields; nothing typed is lost.</summary>
/// <param name="Form">Which form of the page; empty for none.</param>
/// <param name="Typed">What was typed, by field.</param>
/// <param name="Refusals">Why it was not taken.</param>
public sealed record FormState(string Form, IReadOnlyDictionary<string, string> Typed, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>No form was sent.</summary>
    public static FormState None { get; } = new("", new Dictionary<string, string>(), []);

    /// <summary>A form opened by the address, its fields filled there, as a link from another page does.</summary>
    public static FormState Asked(HttpRequest request) => request.Query["form"].ToString() is { Length: > 0 and <= 40 } form
        ? new FormState(form, request.Query.Where(q => q.Key != "form").ToDictionary(q => q.Key, q => q.Value.ToString() is var v && v.Length > 200 ? v[..200] : v), [])
        : None;

    /// <summary>The answer's status.</summary>
    public int Status => PageAnswer.StatusOf(Refusals);

    /// <summary>A form as it was sent.</summary>
    public static FormState Of(string form, IFormCollection sent, IReadOnlyList<Refusal> refusals) =>
        new(form, sent.ToDictionary(f => f.Key, f => f.Value.ToString()), refusals);

    /// <summary>What a field shows: what was typed, else what it usually holds.</summary>
    public string Value(string form, string field, string usual) => form == Form && Typed.TryGetValue(field, out var typed) ? typed : usual;

    /// <summary>Why a field of a form was not taken; empty when it was.</summary>
    public IEnumerable<string> Why(string form, string field) =>
        form != Form ? [] : Refusals.Where(r => FieldOf(r) == field).Select(r => Sentence(r.Message));

    /// <summary>Refusals of a form that none of its fields shows.</summary>
    public IEnumerable<string> Rest(string form, IReadOnlySet<string> fields) =>
        form != Form ? [] : Refusals.Where(r => !fields.Contains(FieldOf(r))).Select(r => r.Field is "" or "/entry/id" ? Sentence(r.Message) : $"{r.Field.TrimStart('/')}: {Sentence(r.Message)}");

    /// <summary>The fields of the page are named by themselves, without the form's name before them.</summary>
    public bool BareIds { get; init; }

    /// <summary>Everything that was wrong: the field on the page, its name where the page has it, and why.</summary>
    public IReadOnlyList<(string Id, string? Name, string Why)> Summary()
    {
        var t = PageTexts.English;
        return [.. Refusals.Select(r => (Field: FieldOf(r), r.Message)).Select(r => BareIds || Typed.ContainsKey(r.Field)
            ? (BareIds ? r.Field : $"{Form}-{r.Field}", t.Keys.Contains("fields." + r.Field) ? t["fields." + r.Field] : null, Sentence(r.Message))
            : ($"form-{Form}", (string?)null, Sentence(r.Message)))];
    }

    /// <summary>The first field of the page that was wrong, which takes the focus; null when none of them was.</summary>
    public bool IsFirstWrong(string form, string field) => form == Form && Typed.Keys.FirstOrDefault(f => Refusals.Any(r => FieldOf(r) == f)) == field;

    // A day is the one thing of a stamp that a form asks for.
    private static string FieldOf(Refusal refusal) => refusal.Field is "/entry/happenedAt" or "/entry/enteredAt" ? OfficeForms.DayField : refusal.Field.TrimStart('/');

    // Written for phones and programs too: at the office no device's clock is meant, and no id need be known.
    private static string Sentence(string message) => Ended(message
        .Replace(" (the device's clock error taken off)", "", StringComparison.Ordinal).Replace(", and the device's clock", "", StringComparison.Ordinal)
        .Replace("give a number in in", "give a number in inches", StringComparison.Ordinal).Replace("use 1 to 40 letters", "use 1 to 40 plain letters", StringComparison.Ordinal));

    private static string Ended(string message) => message.Length == 0 ? "" : char.ToUpperInvariant(message[0]) + message[1..] + (message[^1] is '.' or '?' ? "" : ".");
}
