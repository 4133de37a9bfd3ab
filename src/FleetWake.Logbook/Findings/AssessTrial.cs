using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>Works out one trial at one position: mean RPM and speed over its headings, slip, hours, what it comes to at reference conditions, and what widens its doubt.</summary>
internal static class AssessTrial
{
    /// <summary>The trial at a position; null when no tachometer was read there. A reading that somebody said was right is believed, however odd.</summary>
    public static AssessMounting.Worked? At(
        Position position, TrialRun trial, EngineCard? engine, GaugeError? gauge, MeterChain? meter, double? pitchInches, TrialConditions? baseline, BoatResponse response, int stretch, bool believed)
    {
        if (TrialReadings.Of(position, trial, engine, gauge, pitchInches, baseline, response) is not { } reading) return null;
        var corrected = TrialCorrection.Of(reading);
        var hours = meter?.At(trial.Entry);
        var found = new TrialFinding(
            trial.Entry.Id,
            trial.Entry.Date(),
            hours?.Hours,
            hours?.Bridged ?? false,
            corrected.Rpm.Value,
            corrected.SpeedKnots?.Value,
            100 * corrected.SlipFraction?.Value,
            stretch,
            SetAside(trial, reading, engine, gauge, hours, believed),
            corrected.Doubts)
        {
            TurnedRpm = corrected.Rpm.Value / (1 + (reading.Engine.TachometerError?.Value ?? 0)),
            RpmSd = corrected.Rpm.StandardDeviation,
            SlipSdPercent = 100 * corrected.SlipFraction?.StandardDeviation,
            Reference = ReferenceOf(trial, corrected),
        };
        return new AssessMounting.Worked(found, corrected, trial.Runs.All(r => r.Tachometers.All(t => t.Position != position || t.Ventilated is not null)), pitchInches, trial.Entry)
        {
            AirCelsius = trial.AirTemperatureCelsius,
            LoadKilograms = TrialReadings.LoadKilograms(trial),
        };
    }

    /// <summary>
    /// The air's temperature is the one reading without which a correction is a guess: pressure and humidity change little
    /// at one dock, and what they may be is part of the doubt.
    /// </summary>
    private static AtReference? ReferenceOf(TrialRun trial, CorrectedTrial corrected) =>
        trial is { Throttle: Throttle.WideOpen, AirTemperatureCelsius: not null } && corrected.Correction is { InValidity: true } correction
            ? new AtReference(corrected.CorrectedRpm.Value, corrected.CorrectedRpm.StandardDeviation, corrected.CorrectedSpeedKnots?.Value, correction.Factor.Value)
            : null;

    /// <summary>A wide-open reading brought to reference conditions elsewhere: it counts as a trial does, and has no speed and no slip.</summary>
    public static TrialFinding Of(NormalisedRpmRead read, EngineCard? engine, MeterChain? meter, int stretch, bool believed)
    {
        var hours = meter?.At(read.Entry);
        var setAside = !believed && !Credible([read.Rpm], engine) ? SetAsideReason.NotCredible : hours is null ? SetAsideReason.HoursUnknown : (SetAsideReason?)null;
        return new TrialFinding(
            read.Entry.Id, read.Entry.Date(), hours?.Hours, hours?.Bridged ?? false, read.Rpm, null, null, stretch, setAside, [])
        {
            Normalised = true,
            TurnedRpm = read.Rpm,
            Reference = new AtReference(read.Rpm, null, null, null),
        };
    }

    private static SetAsideReason? SetAside(TrialRun trial, TrialReading reading, EngineCard? engine, GaugeError? gauge, HoursAt? hours, bool believed) =>
        trial.Throttle == Throttle.Part ? SetAsideReason.PartThrottle
        : !believed && !(Credible(reading.Runs.Select(r => r.Engine.RevolutionsPerMinute), engine) && Math.Abs(gauge?.Error.Value ?? 0) <= GaugeErrors.Most) ? SetAsideReason.NotCredible
        : reading.Runs.Any(r => r.LimiterReached) ? SetAsideReason.LimiterReached
        : reading.Runs.Any(r => r.Ventilated) ? SetAsideReason.Ventilated
        : hours is null ? SetAsideReason.HoursUnknown
        : null;

    /// <summary>Whether readings can be believed; without a band there is nothing to doubt them by.</summary>
    private static bool Credible(IEnumerable<double> rpm, EngineCard? engine) =>
        engine is not { BandLowRpm: { } low, BandHighRpm: { } high } || rpm.All(r => CredibleRpm.Is(r, low, high));
}
