using System.Globalization;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>Where a corrected RPM stands against the rated band.</summary>
internal static class BandWords
{
    /// <summary>Short code: in, below, above, unclear, or null when nothing can be said of the band.</summary>
    public static string? Code(TrialAnswer answer)
    {
        if (answer.Reading.PartThrottle || answer.Reading.Engine is not { BandLow: { } low, BandHigh: { } high }) return null;
        // The gauge's own error counts here, where a number is held against a rule and not against the boat's past.
        var (rpm, doubt) = (answer.Trial.CorrectedRpm, 2 * Sd(answer.Trial));
        var (bottom, top) = (low.RevolutionsPerMinute, high.RevolutionsPerMinute);
        if (answer.Trial.Doubts.Contains(TrialDoubt.LimiterReached)) return rpm.Value - doubt > top ? "above" : "unclear";
        if (rpm.Value + doubt < bottom) return "below";
        if (rpm.Value - doubt > top) return "above";
        return rpm.Value - doubt >= bottom && rpm.Value + doubt <= top ? "in" : "unclear";
    }

    /// <summary>The same as a sentence; null when nothing can be said.</summary>
    public static string? Sentence(TrialAnswer answer)
    {
        if (Code(answer) is not { } code) return null;
        var (low, high) = (answer.Reading.Engine.BandLow!.Value.RevolutionsPerMinute, answer.Reading.Engine.BandHigh!.Value.RevolutionsPerMinute);
        var rpm = answer.Trial.CorrectedRpm.Value;
        var band = string.Create(CultureInfo.InvariantCulture, $"{low:0}-{high:0}");
        var words = code switch
        {
            "in" => $"in the band {band}",
            "below" => $"below the band {band}: the engine lugs",
            "above" => $"above the band {band}: the engine runs too fast",
            _ when answer.Trial.Doubts.Contains(TrialDoubt.LimiterReached) => $"held by the limiter: at least this much, against a band of {band}",
            _ when rpm < low => $"below the bottom of the band {band}, but within the doubt of it",
            _ when rpm > high => $"above the top of the band {band}, but within the doubt of it",
            _ => $"in the band {band}, but an end of it is within the doubt",
        };
        var margin = rpm < low || rpm > high || answer.Trial.Doubts.Contains(TrialDoubt.LimiterReached) ? "" : string.Create(CultureInfo.InvariantCulture, $"; {high - rpm:0} below its top, {rpm - low:0} above its bottom");
        return words + margin;
    }

    /// <summary>One standard deviation of the corrected RPM as against the band [rev/min].</summary>
    private static double Sd(CorrectedTrial trial) =>
        Math.Sqrt((trial.CorrectedRpm.StandardDeviation * trial.CorrectedRpm.StandardDeviation) + (trial.UncheckedTachometerRpm * trial.UncheckedTachometerRpm));
}
