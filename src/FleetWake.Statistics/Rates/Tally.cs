namespace FleetWake.Statistics.Rates;

/// <summary>How often something happened, and how long it could have happened.</summary>
/// <param name="Count">Events, such as strikes at one dock; zero or more.</param>
/// <param name="Exposure">
/// For how long, in a unit that every tally compared has in common (boat-months, hours, outings); zero or more, finite.
/// </param>
public readonly record struct Tally(int Count, double Exposure)
{
    internal static void Check(Tally tally, string name)
    {
        if (tally.Count < 0)
            throw new ArgumentOutOfRangeException(name, tally.Count, "Count must be zero or more.");
        if (!(tally.Exposure >= 0) || !double.IsFinite(tally.Exposure))
            throw new ArgumentOutOfRangeException(name, tally.Exposure, "Exposure must be zero or more and finite.");
        if (tally.Count > 0 && tally.Exposure == 0)
            throw new ArgumentOutOfRangeException(
                name, tally.Exposure, $"{tally.Count} events need an exposure above zero.");
    }
}
