using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using Microsoft.AspNetCore.Http;

namespace FleetWake.Web.Office.Props;

/// <summary>Which props somebody wants to see, as the address tells it.</summary>
/// <param name="Text">How a tag begins; empty for all.</param>
/// <param name="Dock">Id of a dock where spares lie.</param>
/// <param name="Standing">Where a prop is, by its word.</param>
/// <param name="Size">Size as written on the page.</param>
/// <param name="Material">Material, by its word.</param>
/// <param name="After">The last tag of the page before.</param>
public sealed record PropsFilter(string Text, string Dock, string Standing, string Size, string Material, string After)
{
    private const int Longest = 60;

    public bool Any => Text.Length + Dock.Length + Standing.Length + Size.Length + Material.Length > 0;

    public static PropsFilter Of(HttpRequest request)
    {
        string Read(string name) => request.Query[name].ToString().Trim() is var text && text.Length > Longest ? text[..Longest] : text;
        return new PropsFilter(Read("q"), Read("dock"), Read("standing"), Read("size"), Read("material"), Read("after"));
    }

    /// <summary>Whether what is stamped on a prop, or told of it since, is what is asked for.</summary>
    public bool Takes(string tag, string? size, PropMaterial? material) =>
        tag.StartsWith(Text, StringComparison.OrdinalIgnoreCase)
        && (Size.Length == 0 || size == Size)
        && (Material.Length == 0 || (material is { } made && Words.Of(made) == Material));

    /// <summary>Whether a prop is where it is asked for, its standing aside.</summary>
    public bool Takes(PropPlace place) => Dock.Length == 0 || place.Dock == Dock;

    /// <summary>The address of the list with some of it changed.</summary>
    public string Address(string? standing = null, string? after = null)
    {
        (string Name, string Value)[] asked = [("q", Text), ("dock", Dock), ("standing", standing ?? Standing), ("size", Size), ("material", Material), ("after", after ?? "")];
        var query = string.Join('&', asked.Where(a => a.Value.Length > 0).Select(a => $"{a.Name}={Uri.EscapeDataString(a.Value)}"));
        return query.Length == 0 ? "/office/props" : "/office/props?" + query;
    }
}
