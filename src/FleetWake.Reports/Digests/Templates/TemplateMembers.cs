using System.Reflection;
using System.Text.Json;
using Fluid;

namespace FleetWake.Reports.Digests.Templates;

/// <summary>What a template can see: the members of marked records, and nothing else of the program.</summary>
internal static class TemplateMembers
{
    /// <summary>Makes every marked record of this room visible.</summary>
    public static void Register(MemberAccessStrategy members)
    {
        foreach (var type in typeof(InTemplatesAttribute).Assembly.GetTypes().Where(IsMarked))
            foreach (var (name, property) in Of(type)) members.Register(type, [KeyValuePair.Create(name, (IMemberAccessor)new Member(property))]);
    }

    /// <summary>The members of a marked record by the names that templates use.</summary>
    public static IEnumerable<(string Name, PropertyInfo Property)> Of(Type type) =>
        from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
        where property.GetIndexParameters().Length == 0 && IsPlain(property.PropertyType)
        select (property.GetCustomAttribute<InTemplatesAttribute>()?.Name ?? JsonNamingPolicy.SnakeCaseLower.ConvertName(property.Name), property);

    /// <summary>What a template sees of a value: no null texts, for a template asks <c>!= ''</c>; days as they are written.</summary>
    public static object? Shown(PropertyInfo property, object of) => property.GetValue(of) switch
    {
        null when property.PropertyType == typeof(string) => "",
        DateOnly day => $"{day:yyyy-MM-dd}",
        var value => value,
    };

    /// <summary>Every name that the templates of a digest can use.</summary>
    public static IReadOnlyCollection<string> Names(DigestModel model) =>
        [.. Tree(model.Draft.Content.GetType()).SelectMany(t => Of(t.Type).Select(m => m.Name)).Concat(["subject", "charts"]).Concat(Of(typeof(DrawnChart)).Select(m => m.Name)).Distinct(StringComparer.Ordinal)];

    /// <summary>The marked records that a record leads to, each with the name by which its first list or member is reached.</summary>
    public static IEnumerable<(string Path, Type Type)> Tree(Type type, string path = "")
    {
        yield return (path, type);
        foreach (var (name, property) in Of(type))
            if (Inner(property.PropertyType) is { } inner)
                foreach (var below in Tree(inner, path.Length == 0 ? name : $"{path}.{name}")) yield return below;
    }

    private static Type? Inner(Type type) => IsMarked(type) ? type : type.IsGenericType && Inner(type.GetGenericArguments()[0]) is { } inner ? inner : null;

    private static bool IsMarked(Type type) => type.GetCustomAttribute<InTemplatesAttribute>() is not null;

    private static bool IsPlain(Type type) =>
        type == typeof(string) || type == typeof(bool) || type == typeof(int) || type == typeof(double) || type == typeof(DateOnly) || IsMarked(type)
        || (Nullable.GetUnderlyingType(type) is { } value && IsPlain(value))
        || (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>) && IsPlain(type.GetGenericArguments()[0]));

    private sealed class Member(PropertyInfo property) : IMemberAccessor
    {
        public object? Get(object obj, string name, TemplateContext ctx) => Shown(property, obj);
    }
}
