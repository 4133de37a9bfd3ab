using System.Globalization;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Web.Office;

/// <summary>A prop as the trade writes it: diameter, then pitch, in inches everywhere.</summary>
internal static class PropWords
{
    public static string Size(double diameter, double pitch) => string.Create(CultureInfo.InvariantCulture, $"{diameter:0.##} × {pitch:0.##}");

    /// <summary>Size, blades and material, as far as they are known.</summary>
    public static string Of(PropCard prop)
    {
        string?[] parts =
        [
            prop is { DiameterInches: { } d, PitchInches: { } p } ? Size(d, p) + " in" : null,
            prop.Blades is { } blades ? $"{blades} blades" : null,
            prop.Material is { } material ? Words.Prose(material) : null,
        ];
        return string.Join(", ", parts.OfType<string>());
    }

    public static string Tag(PropCard prop) => Phrases.Plain(prop.Prop);
}
