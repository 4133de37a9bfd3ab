using FleetWake.Propulsion.Causes;

namespace FleetWake.Propulsion.Advice;

/// <summary>What is said of a pitch.</summary>
public enum PitchVerdict
{
    /// <summary>The one that is advised.</summary>
    Advised,

    /// <summary>Keeps the rules, but another one lands in the band more surely.</summary>
    Possible,

    /// <summary>Two standard deviations above the RPM expected in the densest air lie above the band's top in some use: never.</summary>
    MayOverRev,

    /// <summary>The expected RPM at the usual load lies below the band's bottom: the engine would lug.</summary>
    Lugs,
}

/// <summary>Where a pitch lands in one use, in reference air.</summary>
/// <param name="Use">The use's name.</param>
/// <param name="Rpm">Expected corrected RPM with its doubt [rev/min]; its logarithm is normal.</param>
/// <param name="InBand">Chance of landing in the band [1].</param>
/// <param name="AboveTop">Chance of landing above it [1].</param>
public sealed record PitchLanding(string Use, Uncertain Rpm, double InBand, double AboveTop)
{
    /// <summary>Chance of landing below the band [1].</summary>
    public double BelowBottom => Math.Max(0, 1 - InBand - AboveTop);

    /// <summary>Two standard deviations above the RPM expected in the densest air [rev/min]; what must lie within the band's top.</summary>
    public required double HighestRpm { get; init; }

    /// <summary>An end of an interval of RPM [rev/min]: N exp(k s/N), as the logarithm is normal.</summary>
    /// <param name="deviations">k [1], how many standard deviations up; below zero for down.</param>
    public double At(double deviations) => Rpm.Value * Math.Exp(deviations * Rpm.StandardDeviation / Rpm.Value);
}

/// <summary>One pitch in every use.</summary>
/// <param name="Pitch">The pitch.</param>
/// <param name="Fitted">It is the prop that the RPM was read with.</param>
/// <param name="Landings">One a use, in the order of the question; the first is the usual one.</param>
/// <param name="Verdict">What is said of it.</param>
public sealed record PitchRow(Length Pitch, bool Fitted, IReadOnlyList<PitchLanding> Landings, PitchVerdict Verdict)
{
    /// <summary>Uses in which it is more likely than not below the band: the engine lugs there.</summary>
    public IEnumerable<string> LugsAt => Landings.Where(landing => landing.BelowBottom > 0.5).Select(landing => landing.Use);
}

/// <summary>The advice.</summary>
/// <param name="Rows">All pitches, lowest first.</param>
/// <param name="Advised">The row that is advised; null when none keeps the rules.</param>
/// <param name="FirstRuleOut">
/// What must be ruled out before a change of pitch is a remedy: of an RPM above the band a worn prop, lost pitch or worn tips, hub slip, ventilation and a light
/// load; of one below it load or fouling, a weak engine, rough or bent blades. Told within the band, too, when another pitch is advised. Empty when the fitted one stays on.
/// </param>
public sealed record PitchTable(IReadOnlyList<PitchRow> Rows, PitchRow? Advised, IReadOnlyList<Cause> FirstRuleOut)
{
    /// <summary>What the densest air is expected to add to the RPM asked about [rev/min]; it was counted against the band's top in every use.</summary>
    public required double DenseAirRpm { get; init; }
}
