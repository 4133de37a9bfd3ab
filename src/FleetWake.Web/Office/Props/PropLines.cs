using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Props;
using FleetWake.Reports.Pictures;
using FleetWake.Store.Histories;
using FleetWake.Web.Frame;

namespace FleetWake.Web.Office.Props;

/// <summary>A prop in a few words, the same on every page.</summary>
internal static class PropLines
{
    /// <summary>Size, blades, material and rotation, as far as they are known.</summary>
    public static string What(PropLife prop)
    {
        var t = PageTexts.English;
        string?[] parts =
        [
            prop.Numbers is { DiameterInches: { } d, PitchInches: { } p } ? PropWords.Size(d, p) + "\u00A0in" : null,
            prop.Registered is { Blades: var blades } ? t.With("prop.blades", ("n", blades)) : null,
            prop.Registered is { Material: var material } ? t["prop.of-" + Words.Of(material)].ToLowerInvariant() : null,
            prop.Registered is { Rotation: var rotation } ? t["prop.turns-" + Words.Of(rotation)] : null,
        ];
        return parts.OfType<string>().ToList() is { Count: > 0 } known ? string.Join(", ", known) : t["prop.not-registered"];
    }

    /// <summary>Where it is, behind the word of its standing.</summary>
    public static string Where(PropPlace place, OfficeState office, IReadOnlyDictionary<string, string> names)
    {
        var t = PageTexts.English;
        return place switch
        {
            { Boat: { } boat } => Phrases.Plain(names.GetValueOrDefault(boat, boat)) + (place.Position is { } at and not Logbook.Position.Single ? ", " + Words.Prose(at) : ""),
            { Standing: PropStanding.Spare, Dock: { } dock } => Phrases.Plain(office.DockName(dock)) + (place.DockAssumed ? " " + t["prop.dock-assumed"] : ""),
            { Standing: PropStanding.Spare } => t["prop.dock-unknown"],
            { Shop: { } shop } => Phrases.Plain(shop),
            { Retired: { } why } => t["prop.why-" + Words.Of(why)].ToLowerInvariant(),
            _ => "",
        };
    }
}
