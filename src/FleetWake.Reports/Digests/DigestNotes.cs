using FleetWake.Logbook.Findings;
using FleetWake.Reports.Pictures;

namespace FleetWake.Reports.Digests;

/// <summary>The small print: how the numbers came about, and what they are not.</summary>
internal static class DigestNotes
{
    public static IReadOnlyList<string> Caution(IReadOnlyList<BoatFinding> findings) =>
    [
        "Engine off, key out, lanyard off before anybody touches a propeller.",
        "These figures are a decision aid. The owner's manual, local rules and a licensed technician come first.",
        "A boat that is not for hire, or that waits for a look, stays until what releases it is done and recorded.",
        "A small drift or no alarm does not mean sound: lost pitch and rough blades can cancel out. Only an inspection says fit.",
        .. Dates(findings),
    ];

    private static IEnumerable<string> Dates(IReadOnlyList<BoatFinding> findings)
    {
        var zones = findings.Select(f => f.Registered?.DockZone).OfType<string>().Select(Phrases.Plain).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        if (zones.Count > 0) yield return $"Dates are those of each boat's dock ({string.Join(", ", zones)}).";
    }

    public static IReadOnlyList<string> Method(IReadOnlyList<BoatFinding> findings)
    {
        var methods = findings.Select(f => Phrases.Plain(f.Method)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return
        [
            "RPM at reference air is what the trial would have shown at 25 deg C and 99 kPa of dry air; where too little was read of the air, RPM is as read. A gauge that was checked is brought right in both. "
            + "Load is reckoned with where it was told; trim is part of the scatter.",
            "Drift begins with what props of that material in that water did in this fleet, and the boat's own trials correct it; the range holds the truth eight times in ten. "
            + "Where it is called mostly what its fleet makes likely, its own trials say next to nothing yet. A strike, work on the prop or a change of the boat begins a new level. "
            + "A reading that is out of line with the others (misread, or something gave way) counts less, and is not thrown away.",
            "The margin is the less favourable of that of the last reading and that of the trials together. Hours are engine hours, counted from the last trial; dates follow from how the boat is used.",
            "A drift alarm means that the trials have become several times as likely with drift as without; how often one comes without drift stands beside it.",
            .. methods.Count == 0 ? [] : new[] { $"Method: {string.Join("; ", methods)}." },
        ];
    }
}
