using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Advice;
using FleetWake.Propulsion.Trials;
using FleetWake.Statistics;

namespace FleetWake.Web.Office.Boat;

/// <summary>Where each pitch would put the engine, reckoned from what the present prop showed when its stretch was new.</summary>
/// <param name="Table">The advice.</param>
/// <param name="Question">What it was asked with.</param>
/// <param name="AtReference">The RPM is that at reference air; else as read.</param>
/// <param name="TachometerChecked">The gauge was held against an instrument; else its own error is in the doubt.</param>
public sealed record PitchCard(PitchTable Table, PitchQuestion Question, bool AtReference, bool TachometerChecked)
{
    private const double DoubleRun = 0.0075; // [1]; scatter of a double run's RPM, common practice, no source
    private const int Steps = 3;
    private const double LeastPitch = 3;
    private const double MostPitch = 40;

    internal static PitchCard? Of(PositionFinding position)
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
        return new PitchCard(PitchAdvice.Of(question), question, mounting.AtReference, engine.Tachometer is not null);
    }
}
