namespace FleetWake.Propulsion.OpenWater;

/// <summary>Where a series was measured and regressed; beyond it a value is an extrapolation.</summary>
/// <param name="FewestBlades">Fewest blades.</param>
/// <param name="MostBlades">Most blades.</param>
/// <param name="LowestArea">Lowest area ratio [1]: A_E/A_0, for the Gawn-Burrill series A_D/A_0.</param>
/// <param name="HighestArea">Highest area ratio [1].</param>
/// <param name="LowestPitch">Lowest P/D [1].</param>
/// <param name="HighestPitch">Highest P/D [1].</param>
/// <param name="LowestAdvance">Lowest J [1].</param>
/// <param name="HighestAdvance">Highest J [1]; the charts themselves end where thrust does.</param>
public sealed record SeriesRange(
    int FewestBlades, int MostBlades,
    double LowestArea, double HighestArea,
    double LowestPitch, double HighestPitch,
    double LowestAdvance, double HighestAdvance)
{
    internal bool Holds(int blades, double area, double pitchRatio) =>
        blades >= FewestBlades && blades <= MostBlades
        && area >= LowestArea && area <= HighestArea
        && pitchRatio >= LowestPitch && pitchRatio <= HighestPitch;
}
