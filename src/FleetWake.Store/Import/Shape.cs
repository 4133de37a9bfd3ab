using System.Reflection;
using System.Text.Json;
using FleetWake.Logbook.Entries;

namespace FleetWake.Store.Import;

/// <summary>What a cell holds.</summary>
internal enum CellKind
{
    Text,
    Time,
    Number,
    Whole,
    YesNo,

    /// <summary>The entry id of another row, or its key in a column of that name with <c>_key</c>.</summary>
    EntryId,

    /// <summary>No cell of its own: fields of its own, each with a column.</summary>
    Group,
}

/// <summary>A field of a kind of record, as columns see it.</summary>
/// <param name="Name">Its name in a header, lower snake case.</param>
/// <param name="Member">Its name in JSON.</param>
/// <param name="Kind">What its cell holds.</param>
/// <param name="Type">Type of its value, of one item where it is a list.</param>
/// <param name="List">It holds several: words and numbers in one cell, groups in numbered columns.</param>
/// <param name="Required">No record of the kind is without it.</param>
/// <param name="Fields">The fields of a group.</param>
internal sealed record Shape(string Name, string Member, CellKind Kind, Type Type, bool List, bool Required, IReadOnlyList<Shape> Fields)
{
    /// <summary>Separates the items of a list within one cell.</summary>
    public const char ItemSeparator = '|';

    /// <summary>Ends the name of a column that names another row by its key rather than its entry id.</summary>
    public const string KeySuffix = "_key";

    /// <summary>The fields of a type of record, without its stamp.</summary>
    public static IReadOnlyList<Shape> Of(Type record)
    {
        var parameters = record.GetConstructors().MaxBy(c => c.GetParameters().Length)!.GetParameters().ToDictionary(p => p.Name!, StringComparer.Ordinal);
        return
        [
            .. record.GetProperties(BindingFlags.Public | BindingFlags.Instance)
                .Where(p => p.PropertyType != typeof(Stamp) && p.CanWrite)
                .Select(p => Of(p, required: parameters.TryGetValue(p.Name, out var parameter) && !parameter.HasDefaultValue)),
        ];
    }

    /// <summary>Every column of these fields, where <c>N</c> stands for 1, 2, 3 and so on.</summary>
    public static IEnumerable<string> Columns(IEnumerable<Shape> fields) => fields.SelectMany(f =>
        f.Kind == CellKind.Group ? Columns(f.Fields).Select(inner => f.Name + (f.List ? ".N." : ".") + inner)
        : f.Kind == CellKind.EntryId ? [f.Name, f.Name + KeySuffix]
        : (IEnumerable<string>)[f.Name]);

    /// <summary>A member's name in a header.</summary>
    public static string NameOf(string member) => JsonNamingPolicy.SnakeCaseLower.ConvertName(member);

    private static Shape Of(PropertyInfo property, bool required)
    {
        var type = Nullable.GetUnderlyingType(property.PropertyType) ?? property.PropertyType;
        var list = type.IsGenericType && type.IsAssignableTo(typeof(System.Collections.IEnumerable));
        if (list) type = type.GetGenericArguments()[0];
        type = Nullable.GetUnderlyingType(type) ?? type;
        var kind = KindOf(type);
        return new Shape(
            NameOf(property.Name), JsonNamingPolicy.CamelCase.ConvertName(property.Name), kind, type, list, required, kind == CellKind.Group ? Of(type) : []);
    }

    private static CellKind KindOf(Type type) =>
        type == typeof(double) || type == typeof(decimal) ? CellKind.Number
        : type == typeof(int) || type == typeof(long) ? CellKind.Whole
        : type == typeof(bool) ? CellKind.YesNo
        : type == typeof(Guid) ? CellKind.EntryId
        : type == typeof(string) || type.IsValueType ? CellKind.Text
        : CellKind.Group;
}
