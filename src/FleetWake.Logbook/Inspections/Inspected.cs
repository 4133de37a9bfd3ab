using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Inspections;

/// <summary>Somebody looked at prop, hub, shaft and seal and gave a verdict.</summary>
/// <param name="Entry">The stamp.</param>
/// <param name="Boat">The boat.</param>
/// <param name="Position">The position.</param>
/// <param name="Marks">What was seen; empty when nothing was.</param>
/// <param name="MeasuredPitchInches">Pitch of each blade as measured with a gauge [in]; empty when no gauge was used.</param>
/// <param name="Verdict">The verdict.</param>
/// <param name="Hours">Hour-meter reading [h], when read.</param>
[StoredAs("inspected", 1)]
public sealed record Inspected(
    Entry Entry,
    string Boat,
    Position Position,
    IReadOnlyList<InspectionMark> Marks,
    IReadOnlyList<double> MeasuredPitchInches,
    Verdict Verdict,
    double? Hours) : IMetered
{
    /// <summary>What was in hand or in view; null when nobody said.</summary>
    public IReadOnlyList<InspectedPart>? Seen { get; init; }
}

/// <summary>What an inspection had in hand or in view.</summary>
public enum InspectedPart
{
    /// <summary>The prop.</summary>
    Prop,

    /// <summary>Its hub.</summary>
    Hub,

    /// <summary>The shaft.</summary>
    Shaft,

    /// <summary>The shaft seal.</summary>
    Seal,

    /// <summary>The gear oil.</summary>
    GearOil,
}

/// <summary>What an inspection can see.</summary>
public enum InspectionMark
{
    /// <summary>Chips or nicks in an edge.</summary>
    Chips,

    /// <summary>A crack.</summary>
    Crack,

    /// <summary>Edges worn thin or round.</summary>
    EdgeWear,

    /// <summary>A blade is bent.</summary>
    BentBlade,

    /// <summary>Corrosion.</summary>
    Corrosion,

    /// <summary>The hub has turned in its bore.</summary>
    HubSlip,

    /// <summary>Line at the shaft seal.</summary>
    LineAtSeal,

    /// <summary>Water in the gear oil.</summary>
    WaterInOil,

    /// <summary>Growth on the blades.</summary>
    Growth,
}

/// <summary>What an inspection concludes.</summary>
public enum Verdict
{
    /// <summary>Fit for use.</summary>
    Fit,

    /// <summary>In use, but to be watched.</summary>
    Watch,

    /// <summary>To be repaired.</summary>
    Repair,

    /// <summary>To come off before the boat moves again.</summary>
    TakeOff,
}
