using FleetWake.Logbook.Entries;

namespace FleetWake.Logbook.Props;

/// <summary>
/// Pitch and diameter that a prop goes by: stamped on it, then as a shop told them. What a gauge reads blade by blade is a
/// reading beside these, not a new number: gauges differ by more than props do.
/// </summary>
/// <param name="PitchInches">Pitch [in]; null while the prop is not registered.</param>
/// <param name="DiameterInches">Diameter [in].</param>
public readonly record struct PropNumbers(double? PitchInches, double? DiameterInches)
{
    /// <summary>The numbers after some facts.</summary>
    /// <param name="facts">The prop's facts that count, in order.</param>
    public static PropNumbers Of(IEnumerable<IFact> facts)
    {
        PropRegistered? stamped = null;
        double? pitch = null;
        double? diameter = null;
        foreach (var fact in facts)
        {
            // A registration typed after the first repitch still says what was stamped, and the first one counts.
            if (fact is PropRegistered registered) stamped ??= registered;
            var (told, across) = Told(fact);
            pitch = told ?? pitch;
            diameter = across ?? diameter;
        }

        return new PropNumbers(pitch ?? stamped?.PitchInches, diameter ?? stamped?.DiameterInches);
    }

    /// <summary>The numbers at the moment of an entry.</summary>
    /// <param name="facts">The prop's facts that count, in order.</param>
    /// <param name="order">The order of things.</param>
    /// <param name="entry">The entry.</param>
    public static PropNumbers At(IEnumerable<IFact> facts, IComparer<Entry> order, Entry entry) =>
        Of(facts.Where(f => f is PropRegistered || order.Compare(f.Entry, entry) <= 0));

    private static (double? Pitch, double? Diameter) Told(IFact fact) => fact switch
    {
        Repitched r => (r.PitchAfterInches, r.DiameterAfterInches),
        PropRepaired r => (r.PitchAfterInches, null),
        PropBackFromShop b => (b.PitchInches, b.DiameterInches),
        _ => (null, null),
    };
}
