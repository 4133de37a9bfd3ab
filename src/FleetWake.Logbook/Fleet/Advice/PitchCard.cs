using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Inspections;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Advice;
using FleetWake.Propulsion.Trials;
using FleetWake.Statistics;

namespace FleetWake.Logbook.Fleet.Advice;

/// <summary>Where each pitch would put the engine, reckoned from what the present prop showed when its stretch was new.</summary>
/// <param name="Table">The advice.</param>
/// <param name="Question">What it was asked with.</param>
/// <param name="AtReference">The RPM is that at reference air; else as read.</param>
/// <param name="TachometerChecked">The gauge was held against an instrument; else its own error is in the doubt.</param>
public sealed record PitchCard(PitchTable Table, PitchQuestion Question, bool AtReference, bool TachometerChecked)
{
    /// <summary>What has to be settled before another pitch, or the same, can be advised: none of it is cured by a prop of another pitch.</summary>
    public IReadOnlyList<PitchWait> WaitsFor { get; init; } = [];

    private const double DoubleRun = 0.0075; // [1]; scatter of a double run's RPM, common practice, no source
    private const int Steps = 3;
    private const double LeastPitch = 3;
    private const double MostPitch = 40;

    /// <summary>The advice for a position; null where its band, its prop's pitch or what it turned when new is not known, or that is nothing to go by.</summary>
    /// <param name="position">The position.</param>
    public static PitchCard? Of(PositionFinding position)
    {
        if (position is not { Engine: { BandLowRpm: { } low, BandHighRpm: { } high } engine, Mounting: { Prop: { PitchInches: { } pitch }, BaselineRpm: { } rpm } mounting }) return null;

        // What nobody believes as a wide-open reading is no ground for buying a prop.
        if (rpm < 0.5 * low || rpm > 1.25 * high || high <= low) return null;
        var gauge = engine.Tachometer is null ? TrialNoise.UncheckedTachometer * rpm : 0;
        var step = GaugeStep.StandardUncertainty(engine.TachometerStepRpm ?? TachometerSteps.UnknownRpm);
        var doubt = Math.Sqrt((DoubleRun * rpm * DoubleRun * rpm) + (step * step) + (gauge * gauge));
        var question = new PitchQuestion
        {
            FittedPitch = Length.FromInches(pitch),
            CorrectedRpm = new Uncertain(rpm, doubt),
            BandLow = EngineRate.FromRevolutionsPerMinute(low),
            BandHigh = EngineRate.FromRevolutionsPerMinute(high),
            Available = [.. Enumerable.Range(-Steps, (2 * Steps) + 1).Select(s => pitch + s).Where(p => p is >= LeastPitch and <= MostPitch).Select(Length.FromInches)],
        };
        var table = PitchAdvice.Of(question);
        return new PitchCard(table, question, mounting.AtReference, engine.Tachometer is not null) { WaitsFor = [.. Open(position, table)] };
    }

    private static IEnumerable<PitchWait> Open(PositionFinding position, PitchTable table)
    {
        if (position.Uncleared.Any(i => i.Marks.Contains(InspectionMark.HubSlip))) yield return PitchWait.Hub;
        if (position.Uncleared.Any(i => i.Verdict == Verdict.TakeOff)) yield return PitchWait.TakeOff;
        if (position.Uncleared.Any(i => i.Verdict == Verdict.Repair)) yield return PitchWait.Repair;
        if (position.OpenStrikes.Count > 0 || position.Carried.Count > 0 || position.Damage is not null) yield return PitchWait.Strike;

        // The table reckons from what the prop turned when it was new. Where it left the band since, wear or something else changed.
        if (table.FirstRuleOut.Count == 0 && position.Mounting is { Band.State: BandState.AboveTop or BandState.BelowBottom }) yield return PitchWait.Band;
    }
}

/// <summary>What has to be settled before a pitch is advised.</summary>
public enum PitchWait
{
    /// <summary>The hub slips.</summary>
    Hub,

    /// <summary>An inspection says "take off".</summary>
    TakeOff,

    /// <summary>An inspection asks for a repair.</summary>
    Repair,

    /// <summary>A strike is open.</summary>
    Strike,

    /// <summary>It has left its band since it was new.</summary>
    Band,
}
