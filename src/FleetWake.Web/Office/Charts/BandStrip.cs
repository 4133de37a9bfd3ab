using FleetWake.Logbook.Findings;

namespace FleetWake.Web.Office.Charts;

/// <summary>
/// A boat's place in its rated band as a strip of <see cref="Width"/> by <see cref="Height"/>: the band, the doubt, the place.
/// Every strip shows its band equally wide, so that strips under each other compare.
/// </summary>
/// <param name="BandFrom">Bottom of the band [px].</param>
/// <param name="BandTo">Top of the band [px].</param>
/// <param name="Place">The less favourable of reading and trials together [px], kept within the strip.</param>
/// <param name="DoubtFrom">Lower end of the interval of what the trials together say [px]; null without one.</param>
/// <param name="DoubtTo">Upper end [px].</param>
/// <param name="Side">-1 below the band, 1 above, 0 inside.</param>
/// <param name="Beyond">It lies farther out than the strip shows.</param>
public sealed record BandStrip(double BandFrom, double BandTo, double Place, double? DoubtFrom, double? DoubtTo, int Side, bool Beyond)
{
    public const double Width = 132;
    public const double Height = 20;

    /// <summary>Share of the band shown beyond each of its edges.</summary>
    private const double Aside = 0.3;

    private const double Margin = 7;

    public static BandStrip? Of(PositionFinding position)
    {
        if (position is not { Engine: { BandLowRpm: { } low, BandHighRpm: { } high }, Mounting: { Band.PresentRpm: { } rpm } mounting } || high <= low) return null;
        var (from, to) = (low - (Aside * (high - low)), high + (Aside * (high - low)));
        double At(double value) => Math.Round(Margin + ((Math.Clamp(value, from, to) - from) / (to - from) * (Width - (2 * Margin))), 1);
        return new BandStrip(
            At(low), At(high), At(rpm), mounting.LevelRpm is { } l ? At(l.Low) : null, mounting.LevelRpm is { } h ? At(h.High) : null,
            rpm > high ? 1 : rpm < low ? -1 : 0, rpm > to || rpm < from);
    }
}
