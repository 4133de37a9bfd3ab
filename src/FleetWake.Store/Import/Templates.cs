using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Import;

/// <summary>Writes records as rows, the other way round from <see cref="RowReader"/>.</summary>
public static class Templates
{
    private const string Any = ".N.";

    // Marked as UTF-8, so that a spreadsheet takes it for that.
    private static readonly Encoding Marked = new UTF8Encoding(encoderShouldEmitUTF8Identifier: true);

    /// <summary>Writes an empty sheet for each kind of record into a folder; sheets that are there stay as they are.</summary>
    public static (int Written, int There) Write(string folder)
    {
        Directory.CreateDirectory(folder);
        var (written, there) = (0, 0);
        foreach (var kind in RecordKind.All)
        {
            var path = Path.Combine(folder, kind.Name + ".csv");
            if (File.Exists(path))
            {
                there++;
                continue;
            }

            File.WriteAllBytes(path, Empty(kind));
            written++;
        }

        return (written, there);
    }

    /// <summary>An empty sheet of a kind, as the bytes of a file.</summary>
    public static byte[] Empty(RecordKind kind) => [.. Marked.GetPreamble(), .. Marked.GetBytes(CsvText.Line(Header(kind)) + "\r\n")];

    /// <summary>
    /// Every column of a kind but <c>amends</c>, which <c>amends_key</c> does better; numbered ones as many as its worked
    /// example fills, and two where each is a position's, for twins.
    /// </summary>
    public static IReadOnlyList<string> Header(RecordKind kind)
    {
        var known = SheetHead.Known(kind).ToList();
        var filled = Cells(kind, kind.Example).Select(c => c.Column).ToList();
        return [.. known.Where(c => c != RowKey.AmendsMember).SelectMany(c => Spread("", c.Split(Any), known, filled))];
    }

    /// <summary>A column once for each number that stands for its first <c>N</c>, and so on to its last.</summary>
    private static IEnumerable<string> Spread(string before, ReadOnlySpan<string> parts, IReadOnlyList<string> known, IReadOnlyList<string> filled)
    {
        if (parts.Length == 1) return [before + parts[0]];
        var (group, rest) = (before + parts[0], parts[1..].ToArray());
        var pattern = Numbered(group) + Any;
        var inExample = filled.Where(f => Numbered(f).StartsWith(pattern, StringComparison.Ordinal))
            .Select(f => int.Parse(f.Split('.')[pattern.Count(c => c == '.') - 1], CultureInfo.InvariantCulture)).DefaultIfEmpty(1).Max();
        var most = known.Contains(pattern + "position") ? Math.Max(inExample, 2) : inExample;
        return Enumerable.Range(1, most).SelectMany(n => Spread($"{group}.{n}.", rest, known, filled));
    }

    /// <summary>A record's cells, without its stamp; what it leaves out has none.</summary>
    public static IEnumerable<(string Column, string Text)> Cells(RecordKind kind, ICommand command)
    {
        var fields = JsonSerializer.SerializeToNode(command, kind.CommandType, LogbookJson.Options)!.AsObject();
        fields.Remove("entry");
        return Flat(fields, "");
    }

    private static string Numbered(string column) => string.Join('.', column.Split('.').Select(w => char.IsAsciiDigit(w[0]) ? "N" : w));

    private static IEnumerable<(string Column, string Text)> Flat(JsonObject fields, string prefix)
    {
        foreach (var (member, value) in fields)
        {
            var name = prefix + Shape.NameOf(member);
            switch (value)
            {
                case null:
                    break;
                case JsonObject group:
                    foreach (var cell in Flat(group, name + ".")) yield return cell;
                    break;
                case JsonArray groups when groups.Any(g => g is JsonObject):
                    foreach (var cell in groups.Index().SelectMany(g => Flat(g.Item!.AsObject(), $"{name}.{g.Index + 1}."))) yield return cell;
                    break;
                case JsonArray list:
                    yield return (name, string.Join(Shape.ItemSeparator, list.Select(i => i!.ToString())));
                    break;
                default:
                    yield return (name, value.ToString());
                    break;
            }
        }
    }
}
