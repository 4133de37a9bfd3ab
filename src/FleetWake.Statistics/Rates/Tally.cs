namespace FleetWake.Statistics.Rates;

/// <summary>How often something happened, and how long it could have happened.</summary>
/// <param name="Count">Events, such as strikes at one dock; 0 to 1,000,000.</param>
/// <param name="Exposure">
/// For how long, in a unit that every tally compared has in common (boat-months, hours, outings); 0, or 1e-9 to 1e12.
/// </param>
public readonly record struct Tally(int Count, double Exposure)
{
    internal static void Check(Tally tally, string name)
    {
        if (tally.Count is < 0 or > 1_000_000)
            throw new ArgumentOutOfRangeException(name, tally.Count, "Count must lie within 0 and 1,000,000.");
        if (tally.Exposure != 0 && !(tally.Exposure >= 1e-9 && tally.Exposure <= 1e12))
            throw new ArgumentOutOfRangeException(name, tally.Exposure, "Exposure must be 0, or lie within 1e-9 and 1e12.");
        if (tally.Count > 0 && tally.Exposure == 0)
            throw new ArgumentOutOfRangeException(
                name, tally.Exposure, $"{tally.Count} events need an exposure above zero.");
    }
}
