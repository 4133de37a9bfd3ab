using FleetWake.Logbook.Engines;
using FleetWake.Logbook.Trials;
using FleetWake.Propulsion;

namespace FleetWake.Logbook.Findings;

/// <summary>Works out one trial at one position: mean RPM and speed over its headings, slip, hours, and what widens its doubt.</summary>
internal static class AssessTrial
{
    /// <summary>RPM differs by less than this between headings in a good trial. Common practice, no source.</summary>
    private const double RpmSplitFraction = 0.005;

    /// <summary>The trial at a position; null when no tachometer was read there. A reading that somebody said was right is believed, however odd.</summary>
    public static TrialFinding? At(Position position, TrialRun trial, EngineCard? engine, MeterChain? meter, double? pitchInches, int stretch, bool believed)
    {
        var runs = trial.Runs
            .Select(r => (Run: r, Tachometer: r.Tachometers.FirstOrDefault(t => t.Position == position)))
            .Where(r => r.Tachometer is not null)
            .ToList();
        if (runs.Count == 0) return null;

        var mean = TwoWayMean.Of([.. runs.Select(r => new TimedRun(RunTrial.In(r.Run.Speed, r.Run.SpeedUnit), r.Run.HeadingDegrees))]);
        var rpm = runs.Average(r => r.Tachometer!.Rpm);
        var hours = meter?.At(trial.Entry);
        var slip = SlipPercent(mean.Speed, rpm, engine, pitchInches);
        return new TrialFinding(
            trial.Entry.Id,
            trial.Entry.Date(),
            hours?.Hours,
            hours?.Bridged ?? false,
            rpm,
            mean.Speed.Knots,
            slip,
            stretch,
            SetAside(trial, [.. runs.Select(r => r.Tachometer!)], engine, hours, believed),
            [.. Flags(mean, [.. runs.Select(r => r.Tachometer!.Rpm)], engine, slip)]);
    }

    /// <summary>A wide-open reading brought to reference conditions elsewhere: it counts as a trial does, and has no speed and no slip.</summary>
    public static TrialFinding Of(NormalisedRpmRead read, EngineCard? engine, MeterChain? meter, int stretch, bool believed)
    {
        var hours = meter?.At(read.Entry);
        var setAside = !believed && !Credible([read.Rpm], engine) ? SetAsideReason.NotCredible : hours is null ? SetAsideReason.HoursUnknown : (SetAsideReason?)null;
        return new TrialFinding(
            read.Entry.Id, read.Entry.Date(), hours?.Hours, hours?.Bridged ?? false, read.Rpm, null, null, stretch, setAside, [])
        {
            Normalised = true,
        };
    }

    private static double? SlipPercent(Speed speed, double rpm, EngineCard? engine, double? pitchInches) =>
        engine?.GearRatio is { } gear && pitchInches is { } pitch
            ? 100 * Slip.ApparentSlipFraction(speed, EngineRate.FromRevolutionsPerMinute(rpm), new GearRatio(gear), Length.FromInches(pitch))
            : null;

    private static SetAsideReason? SetAside(TrialRun trial, IReadOnlyList<TachometerReading> readings, EngineCard? engine, HoursAt? hours, bool believed) =>
        trial.Throttle == Throttle.Part ? SetAsideReason.PartThrottle
        : !believed && !Credible(readings.Select(r => r.Rpm), engine) ? SetAsideReason.NotCredible
        : readings.Any(r => r.LimiterReached) ? SetAsideReason.LimiterReached
        : hours is null ? SetAsideReason.HoursUnknown
        : null;

    /// <summary>Whether readings can be believed; without a band there is nothing to doubt them by.</summary>
    private static bool Credible(IEnumerable<double> rpm, EngineCard? engine) =>
        engine is not { BandLowRpm: { } low, BandHighRpm: { } high } || rpm.All(r => CredibleRpm.Is(r, low, high));

    private static IEnumerable<TrialFlag> Flags(MeanSpeed mean, IReadOnlyList<double> rpm, EngineCard? engine, double? slip)
    {
        if (mean.Method == MeanSpeedMethod.SingleRun) yield return TrialFlag.SingleRun;
        if (mean.Method == MeanSpeedMethod.HeadingsNotOpposed) yield return TrialFlag.HeadingsNotOpposed;
        var split = rpm.Max() - rpm.Min();
        if (split > RpmSplitFraction * rpm.Average() && split > (engine?.TachometerStepRpm ?? StraightDrift.UnknownTachometerStepRpm))
            yield return TrialFlag.RpmSplit;
        if (slip < 0) yield return TrialFlag.NegativeSlip;
    }
}
