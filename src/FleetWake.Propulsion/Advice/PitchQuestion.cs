using FleetWake.Propulsion.Response;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Advice;

/// <summary>What a pitch is asked for: where the boat stands, where it should be, and what is to be had.</summary>
public sealed record PitchQuestion
{
    /// <summary>Pitch of the prop that the RPM was read with; the first reading, not a worn one's, unless the advice is for the worn state.</summary>
    public required Length FittedPitch { get; init; }

    /// <summary>Corrected RPM at wide-open throttle with that prop, with its doubt [rev/min].</summary>
    public required Uncertain CorrectedRpm { get; init; }

    /// <summary>Lowest rated rate at wide-open throttle.</summary>
    public required EngineRate BandLow { get; init; }

    /// <summary>Highest rated rate.</summary>
    public required EngineRate BandHigh { get; init; }

    /// <summary>The pitches to be had, 1 to 24; the fitted one is added when it is not among them.</summary>
    public required IReadOnlyList<Length> Available { get; init; }

    /// <summary>The uses of the boat, 1 to 24. The first is the usual one.</summary>
    public IReadOnlyList<LoadCase> Loads { get; init; } = [LoadCase.Usual];

    /// <summary>dlnN/dlnP with its doubt [1], below zero; the prior, or what the engine family has shown.</summary>
    public Uncertain PitchElasticity { get; init; } = LearnedResponse.Prior.PitchElasticity;

    /// <summary>
    /// Standard deviation of lnP between props of one stamped pitch [1]: 1.5 %, the scale of ISO 484 classes I to III (judgement). It counts
    /// twice for another pitch: the fitted prop differs from its stamp, too.
    /// </summary>
    public double PitchBetweenProps { get; init; } = 0.015;

    /// <summary>
    /// ln CF of the densest air that the boat will run in [1], -0.15 to 0; an engine gains g times as much there. Unless told, 0.94: 10 deg C,
    /// 1025 hPa and 75 % humidity, as SAE J1349 has it, a cold bright day of a temperate season (judgement). Zero for a place that is never
    /// cold. Dry air of -10 deg C and 1030 hPa has 0.89, where the formula holds no more.
    /// </summary>
    public double LnDensestAir { get; init; } = Math.Log(0.94);

    /// <summary>g with its doubt [1], above zero; the prior, or what the engine family has shown.</summary>
    public Uncertain Gain { get; init; } = BoatResponse.Prior.Gain;

    internal void Check()
    {
        Need(FittedPitch.Inches > 0, nameof(FittedPitch), FittedPitch, "above zero");
        Need(CorrectedRpm.Value is >= 300 and <= 12_000, nameof(CorrectedRpm), CorrectedRpm.Value, "300 to 12000 rpm");
        Need(CorrectedRpm.StandardDeviation >= 0 && CorrectedRpm.StandardDeviation < CorrectedRpm.Value, nameof(CorrectedRpm), CorrectedRpm.StandardDeviation, "a doubt of zero or more, below the value");
        Need(BandLow.RevolutionsPerMinute > 0 && BandHigh.RevolutionsPerMinute > BandLow.RevolutionsPerMinute, nameof(BandHigh), BandHigh, "above the band's bottom, and that above zero");
        Need(Available is { Count: >= 1 and <= 24 }, nameof(Available), Available?.Count, "1 to 24 pitches");
        Need(Available!.All(p => p.Inches > 0), nameof(Available), 0, "pitches above zero");
        Need(Loads is { Count: >= 1 and <= 24 }, nameof(Loads), Loads?.Count, "1 to 24 uses");
        Need(Loads!.All(l => Math.Abs(l.LnRpm.Value) <= 0.5 && l.LnRpm.StandardDeviation is >= 0 and <= 0.5), nameof(Loads), "LnRpm", "-0.5 to 0.5, with a doubt of 0 to 0.5");
        Need(PitchElasticity.Value is >= -2 and < 0 && PitchElasticity.StandardDeviation is >= 0 and <= 1, nameof(PitchElasticity), PitchElasticity.Value, "-2 to 0, with a doubt of 0 to 1");
        Need(PitchBetweenProps is >= 0 and <= 0.2, nameof(PitchBetweenProps), PitchBetweenProps, "0 to 0.2");
        Need(LnDensestAir is >= -0.15 and <= 0, nameof(LnDensestAir), LnDensestAir, "-0.15 to 0");
        Need(Gain.Value is > 0 and <= 1.5 && Gain.StandardDeviation is >= 0 and <= 0.5, nameof(Gain), Gain.Value, "above 0 to 1.5, with a doubt of 0 to 0.5");
    }

    private static void Need(bool holds, string name, object? value, string range)
    {
        if (!holds) throw new ArgumentOutOfRangeException(name, value, $"Must be {range}.");
    }
}
