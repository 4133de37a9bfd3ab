using System.Globalization;
using System.Text.RegularExpressions;
using FleetWake.Logbook.Entries;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Forms;

/// <summary>
/// Reads what somebody typed into a form. The fields are named as the record's own, so that a refusal of the record's rules
/// finds its field; what is no number at all is refused here, before there is a record.
/// </summary>
/// <param name="form">The form.</param>
internal sealed partial class FormReading(IFormCollection form)
{
    private readonly List<Refusal> refusals = [];

    /// <summary>What could not be read.</summary>
    public IReadOnlyList<Refusal> Refusals => refusals;

    /// <summary>What stands in a field; null when nothing does.</summary>
    public string? Text(string name) => form[name].ToString().Trim() is { Length: > 0 } text ? text : null;

    /// <summary>A number with its decimals behind a point or a comma.</summary>
    public double? Number(string name) =>
        Plain(name) is { } plain ? double.Parse(plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture) : null;

    /// <summary>An amount of money.</summary>
    public decimal? Amount(string name)
    {
        if (Plain(name) is not { } plain) return null;
        if (decimal.TryParse(plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var amount)) return amount;
        refusals.Add(new Refusal("/" + name, "not_a_number", "has too many figures"));
        return null;
    }

    /// <summary>A currency, in capitals whatever was typed.</summary>
    public string? Currency(string name) => Text(name)?.ToUpperInvariant();

    /// <summary>A whole number.</summary>
    public int? Whole(string name)
    {
        if (Text(name) is not { } text) return null;
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole)) return whole;
        refusals.Add(new Refusal("/" + name, "not_a_number", $"\"{Short(text)}\" is no whole number: write figures alone"));
        return null;
    }

    /// <summary>The id of an entry, as a list offers it.</summary>
    public Guid? Entry(string name) => Text(name) is { } text && Guid.TryParse(text, out var id) ? id : null;

    private string? Plain(string name)
    {
        if (Text(name) is not { } text) return null;
        if (!NumberPattern().IsMatch(text))
            refusals.Add(new Refusal("/" + name, "not_a_number", $"\"{Short(text)}\" is no number: write figures alone, without units and marks for the thousands"));
        else if (MayBeThousands().IsMatch(text))
            refusals.Add(new Refusal("/" + name, "not_clear", $"\"{text}\" may be {text.Replace(",", "", StringComparison.Ordinal)} or {text.Replace(',', '.')}: write it without the comma, or with a point"));
        else
            return text.Replace(',', '.');
        return null;
    }

    private static string Short(string text) => text.Length > 40 ? text[..40] + "…" : text;

    [GeneratedRegex(@"\A[+-]?[0-9]{1,15}([.,][0-9]{1,15})?\z")]
    private static partial Regex NumberPattern();

    [GeneratedRegex(@"\A[1-9][0-9]{0,2},[0-9]{3}\z")]
    private static partial Regex MayBeThousands();
}
