using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace FleetWake.Store.Import;

/// <summary>
/// Reads the cells of one file as spreadsheets write them. A decimal comma is read where the comma does not separate
/// columns.
/// </summary>
/// <param name="marks">What points and commas mean in its numbers.</param>
/// <param name="entryId">The entry id of a row by its kind and key.</param>
internal sealed partial class Cells(NumberMarks marks, Func<string, string, Guid> entryId)
{
    /// <summary>The value of a cell as JSON, or why it has none.</summary>
    /// <param name="column">Its column.</param>
    /// <param name="kind">The kind of record.</param>
    /// <param name="text">What it shows, trimmed; not empty.</param>
    public (JsonNode? Value, string? Why) Read(Column column, string kind, string text)
    {
        if (!column.Field.List) return ReadOne(column, kind, text);
        var list = new JsonArray();
        foreach (var item in Items(text))
        {
            var (value, why) = ReadOne(column, kind, item);
            if (why is not null) return (null, why);
            list.Add(value);
        }

        return (list, null);
    }

    /// <summary>
    /// A date and time in the one form in which it is kept, so that a spreadsheet that saves <c>9:05</c> for
    /// <c>09:05:00</c> changes nothing. What is no date and time stays, and is refused by the record's own rules.
    /// </summary>
    public static string Time(string text)
    {
        var match = TimePattern().Match(text);
        if (!match.Success) return text;
        string Part(string name, string missing) => match.Groups[name] is { Success: true } given ? given.Value : missing;
        return $"{Part("date", "")}T{Part("hour", "").PadLeft(2, '0')}:{Part("minute", "")}:{Part("second", "00")}{Part("fraction", "")}{Part("offset", "").ToUpperInvariant()}";
    }

    /// <summary>When something happened: as <see cref="Time"/>, or at noon of a date alone, for noon is never in a change of the clocks.</summary>
    public static string Happened(string text) => IsDateAlone(text) ? $"{text}T12:00:00" : Time(text);

    /// <summary>A date without a time of day, as old logbooks have.</summary>
    public static bool IsDateAlone(string text) => DatePattern().IsMatch(text);

    /// <summary>The items of a cell.</summary>
    public static string[] Items(string text) => text.Split(Shape.ItemSeparator, StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private (JsonNode? Value, string? Why) ReadOne(Column column, string kind, string text) => column.Field.Kind switch
    {
        CellKind.Number or CellKind.Whole => Number(column.Field, text),
        CellKind.YesNo => YesNo(text),
        CellKind.EntryId when column.ByKey => Named(column, kind, text),
        CellKind.EntryId => Guid.TryParse(text, out var id) ? (JsonValue.Create(id), null)
            : (null, $"is no entry id: name the row by its key, in a column {column.Name}{Shape.KeySuffix}"),
        CellKind.Time when column.Name == SheetHead.HappenedAt => HappenedAt(text),
        CellKind.Time => (JsonValue.Create(Time(text)), null),
        _ => (JsonValue.Create(text), null),
    };

    private static (JsonNode? Value, string? Why) HappenedAt(string text) => IsDateAlone(text) || TimePattern().IsMatch(text)
        ? (JsonValue.Create(Happened(text)), null)
        : (null, "give local date and time as in 2026-05-03 10:15, or the date alone as in 2026-05-03; which of 5 and 3 is the month is not guessed at");

    private (JsonNode? Value, string? Why) Number(Shape field, string text)
    {
        if (marks.Why(text) is { } why) return (null, why);
        var plain = text.Replace(',', '.');
        if (field.Kind == CellKind.Whole)
            return long.TryParse(plain, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) && whole is >= int.MinValue and <= int.MaxValue
                ? (JsonValue.Create(whole), null)
                : (null, "is no whole number");
        if (field.Type == typeof(decimal))
            return decimal.TryParse(plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var money)
                ? (JsonValue.Create(money), null)
                : (null, "has too many figures");
        var number = double.Parse(plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        return double.IsFinite(number) ? (JsonValue.Create(number), null) : (null, "has too many figures");
    }

    private static (JsonNode? Value, string? Why) YesNo(string text) => text.ToUpperInvariant() switch
    {
        "YES" or "TRUE" or "1" => (JsonValue.Create(true), null),
        "NO" or "FALSE" or "0" => (JsonValue.Create(false), null),
        _ => (null, "is neither yes nor no: write one of them, or leave the cell empty when nobody said"),
    };

    private (JsonNode? Value, string? Why) Named(Column column, string kind, string text)
    {
        if (column.Field.Member == RowKey.AmendsMember) return (JsonValue.Create(entryId(kind, text)), null);
        var slash = text.IndexOf('/', StringComparison.Ordinal);
        return slash > 0 && Logbook.Entries.RecordKind.Find(text[..slash]) is { } named && text.Length > slash + 1
            ? (JsonValue.Create(entryId(named.Name, text[(slash + 1)..].Trim())), null)
            : (null, "names no row: give its file and its key, as in strike_reported/17");
    }

    [GeneratedRegex(@"\A[0-9]{4}-[0-9]{2}-[0-9]{2}\z")]
    private static partial Regex DatePattern();

    [GeneratedRegex(@"\A(?<date>[0-9]{4}-[0-9]{2}-[0-9]{2})[Tt ]+(?<hour>[0-9]{1,2}):(?<minute>[0-9]{2})(:(?<second>[0-9]{2})(?<fraction>\.[0-9]{1,7})?)? ?(?<offset>[Zz]|[+-][0-9]{2}:[0-9]{2})?\z")]
    private static partial Regex TimePattern();
}
