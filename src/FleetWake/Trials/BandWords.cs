using System.Globalization;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>
/// Where a trial stands against the rated band. The band is a rule for what the engine turns: one that read over it is over it,
/// whatever that comes to at reference air. Where the reading lies in the band, the corrected RPM with its doubt decides.
/// </summary>
internal static class BandWords
{
    /// <summary>Short code: in, below, above, unclear, or null when nothing can be said of the band.</summary>
    public static string? Code(TrialAnswer answer) => Place.Of(answer)?.Code;

    /// <summary>The same as a sentence; null when nothing can be said.</summary>
    public static string? Sentence(TrialAnswer answer)
    {
        if (Place.Of(answer) is not { } at) return null;
        var band = string.Create(CultureInfo.InvariantCulture, $"{at.Low:0}-{at.High:0}");
        if (at.ReadOutside)
        {
            var beyond = Math.Max(at.Turned - at.High, at.Low - at.Turned);
            var away = beyond < 0.5 ? "just" : string.Create(CultureInfo.InvariantCulture, $"{beyond:0}");
            return string.Create(CultureInfo.InvariantCulture,
                $"read {answer.Trial.Rpm.Value:0} at the helm{True(answer, at)}, {away} {at.Code} the band {band}: the engine {(at.Code == "above" ? "runs too fast" : "lugs")}{AtReference(answer)}");
        }

        var words = at.Code switch
        {
            "in" => $"in the band {band}",
            "below" => $"below the band {band}: the engine lugs",
            "above" => $"above the band {band}: the engine runs too fast",
            _ when at.Limited => $"held by the limiter: at least this much, against a band of {band}",
            _ when at.Rpm < at.Low => $"below the bottom of the band {band}, but within the doubt of it",
            _ when at.Rpm > at.High => $"above the top of the band {band}, but within the doubt of it",
            _ => $"in the band {band}, but an end of it is within the doubt",
        };
        var margin = at.Rpm < at.Low || at.Rpm > at.High || at.Limited
            ? ""
            : string.Create(CultureInfo.InvariantCulture, $"; {at.High - at.Rpm:0} below its top, {at.Rpm - at.Low:0} above its bottom");
        return words + margin;
    }

    private static string True(TrialAnswer answer, Place at) => answer.Reading.Engine.TachometerError is { Value: not 0 }
        ? string.Create(CultureInfo.InvariantCulture, $" by a gauge of known error, so {at.Turned:0} turned")
        : "";

    private static string AtReference(TrialAnswer answer) => answer.Trial.Correction is not null
        ? string.Create(CultureInfo.InvariantCulture, $"; {answer.Trial.CorrectedRpm.Value:0} at reference air")
        : "";

    /// <summary>Where a trial stands.</summary>
    /// <param name="Low">The band's bottom [rev/min].</param>
    /// <param name="High">The band's top [rev/min].</param>
    /// <param name="Turned">What the engine turned as far as is known: as read, a known error of the gauge taken out [rev/min].</param>
    /// <param name="Rpm">At reference air [rev/min].</param>
    /// <param name="Limited">The limiter held the engine: a reading below the band is a lower bound.</param>
    /// <param name="ReadOutside">It is the reading that lies outside.</param>
    /// <param name="Code">The short code.</param>
    private sealed record Place(double Low, double High, double Turned, double Rpm, bool Limited, bool ReadOutside, string Code)
    {
        public static Place? Of(TrialAnswer answer)
        {
            if (answer.Reading.PartThrottle || answer.Reading.Engine is not { BandLow: { RevolutionsPerMinute: var low }, BandHigh: { RevolutionsPerMinute: var high } }) return null;
            var trial = answer.Trial;
            var limited = trial.Doubts.Contains(TrialDoubt.LimiterReached);

            // Rounded, so that a mean of runs that all read the band's top is not above it by a binary digit.
            var turned = Math.Round(trial.Rpm.Value / (1 + (answer.Reading.Engine.TachometerError?.Value ?? 0)), 6);
            var outside = turned > high || (turned < low && !limited);

            // The gauge's own error counts here, where a number is held against a rule and not against the boat's past.
            var (rpm, doubt) = (trial.CorrectedRpm.Value, 2 * Math.Sqrt(
                (trial.CorrectedRpm.StandardDeviation * trial.CorrectedRpm.StandardDeviation) + (trial.UncheckedTachometerRpm * trial.UncheckedTachometerRpm)));
            var code = outside ? turned > high ? "above" : "below"
                : rpm - doubt > high ? "above"
                : limited ? "unclear"
                : rpm + doubt < low ? "below"
                : rpm - doubt >= low && rpm + doubt <= high ? "in"
                : "unclear";
            return new Place(low, high, turned, rpm, limited, outside, code);
        }
    }
}
