using System.Globalization;

namespace FleetWake.Propulsion.Logs;

/// <summary>Reads numbers as files write them.</summary>
internal static class Numbers
{
    private const NumberStyles Style = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint
        | NumberStyles.AllowExponent | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;

    /// <summary>The number; null when the text is empty, none, or not finite.</summary>
    internal static double? Parse(ReadOnlySpan<char> text) =>
        double.TryParse(text, Style, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;

    /// <summary>How to mend a text that is no number, to be put behind what is said of it; empty when there is nothing to advise.</summary>
    internal static string Mend(string text, CsvQuantity quantity)
    {
        if (quantity == CsvQuantity.Heading) return ": write degrees 0 to 360, or N, NE, E, SE, S, SW, W or NW";
        // "5,480" is meant as thousands by one reader and as a decimal comma by another: nothing is guessed.
        var parts = text.Trim().Split(',');
        if (parts.Length < 2 || Array.Exists(parts, part => part.Length == 0 || part.AsSpan().IndexOfAnyExceptInRange('0', '9') >= 0)) return "";
        var thousands = parts[0].Length <= 3 && Array.TrueForAll(parts[1..], part => part.Length == 3);
        return thousands ? $": write {string.Concat(parts)}" : parts.Length == 2 ? $": write {parts[0]}.{parts[1]}" : "";
    }
}
