using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Mountings;

namespace FleetWake.Logbook.Props;

/// <summary>Numbers of a prop as somebody told or measured them.</summary>
/// <param name="Entry">The entry they came with.</param>
/// <param name="On">Dock's date.</param>
/// <param name="Source">Where they come from.</param>
/// <param name="PitchInches">One pitch for the prop [in].</param>
/// <param name="PitchInchesByBlade">Pitch of each blade [in]; empty when it was not measured by blade.</param>
/// <param name="DiameterInches">Diameter [in].</param>
/// <param name="Tool">What it was measured with, when told.</param>
public sealed record PropReading(
    Guid Entry,
    DateOnly On,
    PropReadingSource Source,
    double? PitchInches,
    IReadOnlyList<double> PitchInchesByBlade,
    double? DiameterInches,
    PitchTool? Tool = null)
{
    /// <summary>Whether somebody held a gauge to it.</summary>
    public bool Measured() => Source is PropReadingSource.Measured or PropReadingSource.Inspected;

    /// <summary>All readings of a prop, in order: its own, and those of inspections while it was mounted.</summary>
    internal static IReadOnlyList<PropReading> Of(
        IReadOnlyList<IFact> facts, IReadOnlyList<(BoatHistory Boat, MountingSpan Span)> mountings, IComparer<Entry> order)
    {
        var inspected = mountings.SelectMany(m => m.Boat.Inspections
            .Where(i => i.MeasuredPitchInches.Count > 0 && i.Position == m.Span.Fitted.Position && m.Span.Holds(i.Entry))
            .Select(i => (i.Entry, Reading: (PropReading?)new PropReading(i.Entry.Id, i.Entry.Date(), PropReadingSource.Inspected, null, i.MeasuredPitchInches, null))));
        return
        [
            .. facts.Select(f => (f.Entry, Reading: Read(f))).Concat(inspected)
                .Where(r => r.Reading is not null).OrderBy(r => r.Entry, order).Select(r => r.Reading!),
        ];
    }

    private static PropReading? Read(IFact fact)
    {
        PropReading? As(PropReadingSource source, double? pitch, double? diameter, IReadOnlyList<double>? blades = null, PitchTool? tool = null) =>
            pitch is null && diameter is null && blades is null ? null : new(fact.Entry.Id, fact.Entry.Date(), source, pitch, blades ?? [], diameter, tool);

        return fact switch
        {
            PropRegistered r => As(PropReadingSource.Stamped, r.PitchInches, r.DiameterInches),
            Repitched r => As(PropReadingSource.Shop, r.PitchAfterInches, r.DiameterAfterInches),
            PropRepaired r => As(PropReadingSource.Shop, r.PitchAfterInches, null),
            PropBackFromShop b => As(PropReadingSource.Shop, b.PitchInches, b.DiameterInches),
            PropMeasured m => As(PropReadingSource.Measured, null, m.DiameterInches, m.PitchInchesByBlade, m.Tool),
            _ => null,
        };
    }
}

/// <summary>Where a prop's numbers come from.</summary>
public enum PropReadingSource
{
    /// <summary>Stamped on it.</summary>
    Stamped,

    /// <summary>Told by a shop after its work.</summary>
    Shop,

    /// <summary>Measured off the boat.</summary>
    Measured,

    /// <summary>Measured at an inspection.</summary>
    Inspected,
}
