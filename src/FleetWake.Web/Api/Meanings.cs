using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace FleetWake.Web.Api;

/// <summary>
/// What types and their members mean, from the comments that stand beside them in the code: the description of the API
/// and the tables of the docs say what a contributor reads there, and cannot drift away from it.
/// </summary>
public static partial class Meanings
{
    private static readonly ConcurrentDictionary<Assembly, Dictionary<string, XElement>> Read = new();

    /// <summary>What a type is; null when nobody wrote it down.</summary>
    public static string? Of(Type type) => Element(type)?.Element("summary") is { } summary ? Text(summary) : null;

    /// <summary>What a member of a record is; null when nobody wrote it down.</summary>
    public static string? Of(MemberInfo member)
    {
        if (member.DeclaringType is not { } type) return null;
        var parameter = Element(type)?.Elements("param").FirstOrDefault(p => p.Attribute("name")?.Value == member.Name);
        var element = parameter ?? Members(type.Assembly).GetValueOrDefault($"P:{Name(type)}.{member.Name}")?.Element("summary");
        return element is null ? null : Text(element);
    }

    private static XElement? Element(Type type) => Members(type.Assembly).GetValueOrDefault("T:" + Name(type));

    private static string Name(Type type) =>
        ((type.IsGenericType ? type.GetGenericTypeDefinition() : type).FullName ?? type.Name).Replace('+', '.');

    /// <summary>The compiler writes the comments beside the assembly. Without that file everything works, undescribed.</summary>
    private static Dictionary<string, XElement> Members(Assembly assembly) => Read.GetOrAdd(assembly, static a =>
    {
        var file = Path.ChangeExtension(a.Location, ".xml");
        return !File.Exists(file) ? [] : XDocument.Load(file).Descendants("member").ToDictionary(m => m.Attribute("name")!.Value, StringComparer.Ordinal);
    });

    private static string Text(XElement element) => Blanks().Replace(string.Concat(element.Nodes().Select(Text)), " ").Trim();

    private static string Text(XNode node) => node switch
    {
        XText text => text.Value,
        XElement e when e.Attribute("name") is { } name => JsonNamingPolicy.CamelCase.ConvertName(name.Value),
        XElement e when e.Attribute("cref") is { } cref => Words(cref.Value),
        XElement e => Text(e),
        _ => "",
    };

    /// <summary>A reference: a member by its name on the wire, a type or a word as prose.</summary>
    private static string Words(string cref)
    {
        var last = cref[(cref.LastIndexOf('.') + 1)..];
        return cref.StartsWith("P:", StringComparison.Ordinal) ? JsonNamingPolicy.CamelCase.ConvertName(last) : JsonNamingPolicy.SnakeCaseLower.ConvertName(last).Replace('_', ' ');
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}
