using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>Where a position stands, by its last reading as well as by its line.</summary>
/// <param name="Sign">A shape that says the same as the word.</param>
/// <param name="Word">In two or three words.</param>
/// <param name="Sentence">With the numbers.</param>
/// <param name="MarginRpm">The less favourable of the two margins [RPM]; null when neither is known.</param>
/// <param name="Outside">Reading or line is outside the band.</param>
public sealed record Standing(string Sign, string Word, string Sentence, double? MarginRpm, bool Outside);

/// <summary>
/// A boat is called inside its band only when the last reading and the line both are: a line that smooths an
/// over-revving reading away must not clear it.
/// </summary>
public static class Standings
{
    /// <summary>The standing of a position that has a mounting.</summary>
    public static Standing Of(PositionFinding position)
    {
        var standing = position.Mounting!.Band;
        if (position.Engine is not { BandLowRpm: { } low, BandHighRpm: { } high })
        {
            var read = standing.ObservedRpm is { } r ? $"last {Read(standing, r)}, " : "";
            return new Standing("?", "not known", $"{read}no rated band on record", null, false);
        }

        if (standing.ObservedRpm is not { } observed)
            return new Standing("?", "not known", $"no wide-open-throttle trial on record, rated band {low:0} to {high:0}", null, false);

        var present = standing.PresentRpm ?? observed;
        var byReading = Side(observed, low, high);
        var byLine = Side(present, low, high);
        var place = Place(observed, low, high);
        var brought = standing.ReferenceRpm is { } r0 && Math.Abs(r0 - observed) >= 1 ? $" ({r0:0} at reference air)" : "";
        var margin = Math.Min(Margin(observed, low, high), Margin(present, low, high));
        if (byReading == byLine)
        {
            var line = Math.Abs(present - observed) >= 1 ? $", {present:0} by its line" : "";
            var (sign, word) = byReading switch { > 0 => ("▲", "above the top"), < 0 => ("▼", "below the bottom"), _ => ("●", "inside its band") };
            return new Standing(sign, word, $"last {Read(standing, observed)}{line}, {place} of its rated band {low:0} to {high:0}{brought}", margin, byReading != 0);
        }

        // The two disagree: both are said, and it is not called inside.
        var (mixedSign, mixedWord) = byReading switch
        {
            > 0 => ("▲", "read above the top"),
            < 0 => ("▼", "read below the bottom"),
            _ => byLine > 0 ? ("▲", "line above the top") : ("▼", "line below the bottom"),
        };
        return new Standing(
            mixedSign,
            mixedWord,
            $"last {Read(standing, observed)}, {place} of its rated band {low:0} to {high:0}{brought}, while its line says {present:0}: not settled",
            margin,
            true);
    }

    /// <summary>The last reading, and what the gauge showed where a check of it says otherwise.</summary>
    private static string Read(BandStanding standing, double rpm) =>
        standing.GaugeRpm is { } gauge ? $"turned {rpm:0} RPM (its gauge showed {gauge:0})" : $"read {rpm:0} RPM";

    /// <summary>Distance to the nearer edge in words, e.g. <c>50 below the top</c>.</summary>
    public static string Place(double rpm, double low, double high) => Side(rpm, low, high) switch
    {
        > 0 => $"{rpm - high:0} above the top",
        < 0 => $"{low - rpm:0} below the bottom",
        _ => high - rpm <= rpm - low ? $"{high - rpm:0} below the top" : $"{rpm - low:0} above the bottom",
    };

    /// <summary>Distance to the nearer edge, negative outside [RPM].</summary>
    public static double Margin(double rpm, double low, double high) => Math.Min(high - rpm, rpm - low);

    private static int Side(double rpm, double low, double high) => rpm > high ? 1 : rpm < low ? -1 : 0;
}
