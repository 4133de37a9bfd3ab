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
}
