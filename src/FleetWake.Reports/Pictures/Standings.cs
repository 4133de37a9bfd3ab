using FleetWake.Logbook.Findings;

namespace FleetWake.Reports.Pictures;

/// <summary>Where a position stands, by its last reading as well as by its trials together.</summary>
/// <param name="Sign">A shape that says the same as the word.</param>
/// <param name="Word">In two or three words.</param>
/// <param name="Sentence">With the numbers; the distance is the less favourable of the two.</param>
/// <param name="MarginRpm">The less favourable of the two margins [RPM]; null when neither is known.</param>
/// <param name="Outside">Reading or trials together lie outside the band.</param>
public sealed record Standing(string Sign, string Word, string Sentence, double? MarginRpm, bool Outside)
{
    /// <summary>RPM that its trials together say it turns now [RPM]; null where nothing is known or its last reading says as much alone.</summary>
    public double? TogetherRpm { get; init; }

    /// <summary>The less favourable of last reading and trials together [RPM], which the margin is of; null when neither is known.</summary>
    public double? LeastRpm { get; init; }
}

/// <summary>
/// A boat is called inside its band only when the last reading and its trials together both are: what smooths an over-revving
/// reading away must not clear it.
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

        var last = position.Mounting.LastWideOpen(position.Engine);
        if (last?.SetAside == SetAsideReason.LimiterReached)
            return new Standing("▲", "held by the limiter", $"the limiter held it at {observed:0} RPM: without it, it would turn over the top of its rated band {low:0} to {high:0}", Math.Min(high - observed, 0), true) { LeastRpm = observed };
        var present = position.Mounting.TogetherRpm(position.Engine) ?? standing.PresentRpm ?? observed;
        var byReading = Side(observed, low, high);
        var byLine = Side(present, low, high);
        var place = Place(observed, low, high);
        var least = Margin(observed, low, high) <= Margin(present, low, high) ? observed : present;
        var brought = standing.ReferenceRpm is { } r0 && Math.Abs(r0 - observed) >= 1 ? $" ({r0:0} at reference air)" : "";
        var margin = Math.Min(Margin(observed, low, high), Margin(present, low, high));
        if (byReading == byLine)
        {
            var line = Math.Abs(present - observed) >= 1 ? $", {present:0} by its trials together" : "";
            var (sign, word) = byReading switch { > 0 => ("▲", "above the top"), < 0 => ("▼", "below the bottom"), _ => ("●", "inside its band") };
            return new Standing(sign, word, $"last {Read(standing, observed)}{line}, {Place(least, low, high)} of its rated band {low:0} to {high:0}{brought}", margin, byReading != 0) { TogetherRpm = present, LeastRpm = least };
        }

        // The two disagree: both are said, and it is not called inside.
        var (mixedSign, mixedWord) = byReading switch
        {
            > 0 => ("▲", "read above the top"),
            < 0 => ("▼", "read below the bottom"),
            _ => byLine > 0 ? ("▲", "by its trials above the top") : ("▼", "by its trials below the bottom"),
        };
        return new Standing(
            mixedSign,
            mixedWord,
            $"last {Read(standing, observed)}, {place} of its rated band {low:0} to {high:0}{brought}, while its trials together say {present:0}: not settled",
            margin,
            true)
        { TogetherRpm = present, LeastRpm = least };
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
