using System.Globalization;
using System.Text.Json.Nodes;
using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Import;

/// <summary>A column of a sheet: where in the record its cells go.</summary>
/// <param name="Name">Its name as these documents write it.</param>
/// <param name="Path">The way to the group that holds the field; an index where it is one of several.</param>
/// <param name="Field">The field.</param>
/// <param name="ByKey">Its cells name other rows by their keys.</param>
internal sealed record Column(string Name, IReadOnlyList<(string Member, int? Index)> Path, Shape Field, bool ByKey)
{
    /// <summary>Columns numbered higher than this are a slip of the pen.</summary>
    private const int MostItems = 99;

    /// <summary>The field as a JSON pointer, as refusals name it.</summary>
    public string Pointer =>
        string.Concat(Path.Select(s => s.Index is { } i ? $"/{s.Member}/{i}" : $"/{s.Member}")) + "/" + Field.Member;

    /// <summary>It belongs to the record's stamp: who, when and where.</summary>
    public bool IsStamp => Path is [("entry", null), ..];

    /// <summary>The column of a name in a header; null when the fields have none of that name.</summary>
    public static Column? Find(IReadOnlyList<Shape> fields, string header)
    {
        var name = header.ToLowerInvariant();
        var path = new List<(string, int?)>();
        var words = new Queue<string>(name.Split('.'));
        while (words.TryDequeue(out var word))
        {
            if (words.Count == 0) return Leaf(fields, name, word, path);
            if (fields.FirstOrDefault(f => f.Kind == CellKind.Group && f.Name == word) is not { } group) return null;
            if (!group.List) path.Add((group.Member, null));
            else if (words.TryDequeue(out var number) && IsItem(number, out var item)) path.Add((group.Member, item - 1));
            else return null;
            fields = group.Fields;
        }

        return null;
    }

    /// <summary>Writes a value into a record.</summary>
    public void Put(JsonObject record, JsonNode value)
    {
        var at = record;
        foreach (var (member, index) in Path) at = Group(at, member, index);
        at[Field.Member] = value;
    }

    private static Column? Leaf(IReadOnlyList<Shape> fields, string name, string word, List<(string, int?)> path)
    {
        if (fields.FirstOrDefault(f => f.Kind != CellKind.Group && f.Name == word) is { } field) return new Column(name, path, field, false);
        return fields.FirstOrDefault(f => f.Kind == CellKind.EntryId && f.Name + Shape.KeySuffix == word) is { } named
            ? new Column(name, path, named, true)
            : null;
    }

    private static bool IsItem(string word, out int item) =>
        int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out item) && item is >= 1 and <= MostItems;

    private static JsonObject Group(JsonObject at, string member, int? index)
    {
        if (index is not { } i)
        {
            if (at[member] is not JsonObject group) at[member] = group = [];
            return group;
        }

        if (at[member] is not JsonArray list) at[member] = list = [];

        // An item left empty between two others stands as null, which the record's own rules refuse with its number.
        while (list.Count <= i) list.Add(null);
        if (list[i] is not JsonObject item) list[i] = item = [];
        return item;
    }
}
