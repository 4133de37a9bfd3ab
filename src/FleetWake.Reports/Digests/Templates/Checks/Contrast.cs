using System.Globalization;
using System.Text.RegularExpressions;
using AngleSharp.Dom;

namespace FleetWake.Reports.Digests.Templates.Checks;

/// <summary>
/// Contrast between words and what they stand on, in the light and in the dark, by the definition of WCAG 2.2 (success
/// criterion 1.4.3; relative luminance and contrast ratio as in its glossary). Colours are those written on the elements
/// and in the rules for the dark; what a mail program does on its own nobody can check.
/// </summary>
public static partial class Contrast
{
    private const double Usual = 4.5;

    /// <summary>Large words: 24 px, or 18.66 px and bold (18 and 14 points).</summary>
    private const double Large = 3;

    /// <summary>Words that contrast too little.</summary>
    public static IEnumerable<LowContrast> Low(IDocument page, string html)
    {
        foreach (var found in Measured(page, null)) yield return found;
        if (DarkRules(html) is not { Count: > 0 } rules) yield break;
        var dark = new Dictionary<IElement, Dictionary<string, string>>();
        foreach (var (selector, set) in rules)
            foreach (var element in page.QuerySelectorAll(selector))
            {
                if (!dark.TryGetValue(element, out var of)) dark[element] = of = [];
                foreach (var (name, value) in set) of[name] = value;
            }

        foreach (var found in Measured(page, dark)) yield return found;
    }

    /// <summary>Contrast ratio of two colours, 1 to 21; null when one of them is no colour we can read.</summary>
    public static double? Ratio(string ink, string ground) =>
        Luminance(ink) is { } a && Luminance(ground) is { } b ? (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05) : null;

    private static IEnumerable<LowContrast> Measured(IDocument page, Dictionary<IElement, Dictionary<string, string>>? dark)
    {
        foreach (var text in page.Body?.Descendants<IText>() ?? [])
        {
            if (string.IsNullOrWhiteSpace(text.Data) || text.ParentElement is not { } element || Hidden(element)) continue;
            var ink = Found(element, dark, "color") ?? (dark is null ? "#000000" : "#ffffff");
            var ground = Found(element, dark, "background-color") ?? (dark is null ? "#ffffff" : "#000000");
            var size = double.TryParse(Digits().Match(Found(element, null, "font-size") ?? "15").Value, CultureInfo.InvariantCulture, out var px) ? px : 15;
            var bold = Found(element, null, "font-weight") is "600" or "700" or "bold" || element.LocalName is "b" or "strong" or "h1" or "h2" or "h3";
            var needed = size >= 24 || (size >= 18.66 && bold) ? Large : Usual;
            if (Ratio(ink, ground) is { } ratio && ratio < needed) yield return new LowContrast(dark is not null, text.Data.Trim(), ink, ground, ratio, needed);
        }
    }

    private static bool Hidden(IElement? element) =>
        element is not null && (element.LocalName is "style" or "title" or "head" || Style(element).GetValueOrDefault("display") == "none" || Hidden(element.ParentElement));

    private static string? Found(IElement element, Dictionary<IElement, Dictionary<string, string>>? dark, string name)
    {
        for (var at = element; at is not null; at = at.ParentElement)
        {
            if (dark?.GetValueOrDefault(at)?.GetValueOrDefault(name) is { } over) return over;
            if (Style(at).GetValueOrDefault(name) is { } own) return own;
            if (name == "background-color" && at.GetAttribute("bgcolor") is { } old) return old;
        }

        return null;
    }

    private static Dictionary<string, string> Style(IElement element) => Declared(element.GetAttribute("style") ?? "");

    private static Dictionary<string, string> Declared(string style)
    {
        var set = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in style.Split(';').Select(p => p.Split(':', 2)).Where(p => p.Length == 2))
        {
            var (name, value) = (part[0].Trim().ToLowerInvariant(), part[1].Replace("!important", "", StringComparison.Ordinal).Trim().ToLowerInvariant());
            if (name == "font" && FontSize().Match(value) is { Success: true } size) set["font-size"] = size.Groups[1].Value;
            if (name == "background" && value.Split(' ').FirstOrDefault(v => Luminance(v) is not null) is { } ground) (name, value) = ("background-color", ground);
            set[name] = value;
        }

        return set;
    }

    private static List<(string Selector, Dictionary<string, string> Set)> DarkRules(string html)
    {
        var rules = new List<(string, Dictionary<string, string>)>();
        foreach (var block in DarkBlock().Matches(html).Cast<Match>())
            foreach (var rule in Rule().Matches(block.Groups["rules"].Value).Cast<Match>())
                rules.Add((rule.Groups["selector"].Value.Trim(), Declared(rule.Groups["set"].Value)));
        return rules;
    }

    private static double? Luminance(string colour)
    {
        if (Rgb(colour.Trim()) is not var (r, g, b)) return null;
        static double Linear(int c) => c / 255.0 is var s && s <= 0.04045 ? s / 12.92 : Math.Pow((s + 0.055) / 1.055, 2.4);
        return (0.2126 * Linear(r)) + (0.7152 * Linear(g)) + (0.0722 * Linear(b));
    }

    private static (int R, int G, int B)? Rgb(string colour)
    {
        if (colour is "white" or "#fff") return (255, 255, 255);
        if (colour is "black" or "#000") return (0, 0, 0);
        if (Hex().Match(colour) is { Success: true } hex)
        {
            var digits = hex.Groups[1].Value.Length == 3 ? string.Concat(hex.Groups[1].Value.Select(c => $"{c}{c}")) : hex.Groups[1].Value;
            var value = int.Parse(digits, NumberStyles.HexNumber, CultureInfo.InvariantCulture);
            return (value >> 16, (value >> 8) & 255, value & 255);
        }

        return RgbCall().Match(colour) is { Success: true } call
            ? (int.Parse(call.Groups[1].Value, CultureInfo.InvariantCulture), int.Parse(call.Groups[2].Value, CultureInfo.InvariantCulture), int.Parse(call.Groups[3].Value, CultureInfo.InvariantCulture))
            : null;
    }

    [GeneratedRegex("^#([0-9a-fA-F]{3}|[0-9a-fA-F]{6})$")]
    private static partial Regex Hex();

    [GeneratedRegex(@"^rgba?\((\d{1,3}),\s*(\d{1,3}),\s*(\d{1,3})")]
    private static partial Regex RgbCall();

    [GeneratedRegex(@"(?:^|\s)(\d+(?:\.\d+)?)px")]
    private static partial Regex FontSize();

    [GeneratedRegex(@"\d+(?:\.\d+)?")]
    private static partial Regex Digits();

    [GeneratedRegex(@"@media[^{]*prefers-color-scheme:\s*dark[^{]*\{(?<rules>(?:[^{}]*\{[^{}]*\})*)")]
    private static partial Regex DarkBlock();

    [GeneratedRegex(@"(?<selector>[^{}]+)\{(?<set>[^{}]*)\}")]
    private static partial Regex Rule();
}

/// <summary>Words that contrast too little with what they stand on.</summary>
/// <param name="Dark">Where the reader has it dark.</param>
/// <param name="Words">The words.</param>
/// <param name="Ink">Their colour.</param>
/// <param name="Ground">What they stand on.</param>
/// <param name="Ratio">Contrast ratio.</param>
/// <param name="Needed">The least that serves.</param>
public sealed record LowContrast(bool Dark, string Words, string Ink, string Ground, double Ratio, double Needed);
