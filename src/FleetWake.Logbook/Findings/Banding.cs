using FleetWake.Statistics;

namespace FleetWake.Logbook.Findings;

/// <summary>Where a mounting stands in its rated band, and when drift takes it out.</summary>
internal static class Banding
{
    /// <summary>Exits farther off than this are "beyond the horizon" [h]: several seasons of hire.</summary>
    public const double HorizonHours = Statistics.Drift.BandExit.HorizonHours;

    private const int LineSamples = 24;

    /// <summary>Of two trials that disagree nobody knows which is right: their level decides nothing against the last of them.</summary>
    private const int FewestForLevel = 3;

    /// <summary>What the trials of a stretch together say it turned at the last of them [RPM]; null where they are too few or of an earlier stretch.</summary>
    public static double? LevelOf(IReadOnlyList<TrialFinding> trials, int stretch, Estimate? level)
    {
        var usable = trials.Where(MountingSeries.Usable).ToList();
        return usable.Count > 0 && usable[^1].Stretch == stretch && usable.Count(t => t.Stretch == stretch) >= FewestForLevel ? level?.Value : null;
    }

    /// <summary>
    /// The last trial that says anything of the band. One that read over its top, or was held by the limiter, stands
    /// until another of its stretch is read in band at the helm: what somebody brought to reference conditions does not clear it.
    /// </summary>
    public static TrialFinding? LastWideOpen(IReadOnlyList<TrialFinding> trials, EngineCard? engine)
    {
        var last = trials.LastOrDefault(Tells);
        if (last is not { Normalised: true }) return last;
        var read = trials.LastOrDefault(t => Tells(t) && !t.Normalised && t.Stretch == last.Stretch);
        return read is not null && (read.SetAside == SetAsideReason.LimiterReached || read.TurnedRpm > engine?.BandHighRpm) ? read : last;
    }

    /// <summary>How often in a stretch a trial read inside the band after one that read outside.</summary>
    public static int TimesBack(IReadOnlyList<TrialFinding> trials, EngineCard? engine, int stretch)
    {
        if (engine is not { BandLowRpm: { } low, BandHighRpm: { } high }) return 0;
        var outside = trials.Where(t => t.Stretch == stretch && !t.Normalised && Tells(t))
            .Select(t => t.SetAside == SetAsideReason.LimiterReached || Margin(t.TurnedRpm, low, high) < 0).ToList();
        return outside.Zip(outside.Skip(1)).Count(pair => pair is { First: true, Second: false });
    }

    /// <summary>Standing by the last wide-open-throttle trial and the level of all of them: outside if either says so.</summary>
    public static BandStanding Standing(IReadOnlyList<TrialFinding> trials, EngineCard? engine, WearDrift? drift)
    {
        var last = LastWideOpen(trials, engine);
        if (last is null || engine is not { BandLowRpm: { } low, BandHighRpm: { } high })
            return new BandStanding(BandState.NotKnown, last?.TurnedRpm, null, null, null);

        // A limiter-held reading is a lower bound of what the engine would turn: it is over already.
        if (last.SetAside == SetAsideReason.LimiterReached)
            return new BandStanding(BandState.AboveTop, last.TurnedRpm, last.TurnedRpm, Math.Min(high - last.TurnedRpm, 0), BandEdge.Top) { ReferenceRpm = Besides(trials, last), GaugeRpm = Math.Abs(last.Rpm - last.TurnedRpm) < 1 ? null : last.Rpm };

        var byLevel = LevelOf(trials, last.Stretch, drift?.Found.LevelRpm) ?? last.TurnedRpm;
        var present = Margin(last.TurnedRpm, low, high) <= Margin(byLevel, low, high) ? last.TurnedRpm : byLevel;
        var margin = Margin(present, low, high);
        var edge = high - present < present - low ? BandEdge.Top : BandEdge.Bottom;
        var state = margin >= 0 ? BandState.InBand : edge == BandEdge.Top ? BandState.AboveTop : BandState.BelowBottom;
        return new BandStanding(state, last.TurnedRpm, present, margin, edge) { ReferenceRpm = Besides(trials, last), GaugeRpm = Math.Abs(last.Rpm - last.TurnedRpm) < 1 ? null : last.Rpm };
    }

    /// <summary>When drift carries it out of the band, at the edge that it is likelier to leave by; some hours may have run since the last trial [h].</summary>
    public static BandExit Exit(IReadOnlyList<TrialFinding> trials, EngineCard? engine, WearDrift? drift, BandStanding band, int newBaselines, double hoursSince)
    {
        if (engine is not { BandLowRpm: not null, BandHighRpm: not null }) return new BandExit(BandExitState.NotKnown);
        // First of all: where it stood before a repitch says nothing of where it stands after.
        if (newBaselines > 0 && trials.All(t => t.Stretch < newBaselines)) return new BandExit(BandExitState.NoTrialSinceNewBaseline);
        if (band.State is BandState.AboveTop or BandState.BelowBottom) return new BandExit(BandExitState.AlreadyOutside, band.NearerEdge);
        if (drift is null || drift.Found is not { PriorOnly: false, Exit: { } top, ExitBelow: { } bottom }) return new BandExit(BandExitState.TooFewTrials);
        if (drift.LastStretch < newBaselines) return new BandExit(BandExitState.NoTrialSinceNewBaseline);

        var edge = LikelierEdge(top, bottom);
        var exit = edge == BandEdge.Top ? top : bottom;
        double? Within(double hours) => hours < HorizonHours ? hours : null;
        // Of now, not of the last trial; and it may leave by either end.
        var soon = Math.Min(1, top.ChanceWithin(hoursSince + NextTrialCard.ActWithinHours) + bottom.ChanceWithin(hoursSince + NextTrialCard.ActWithinHours));
        return Within(exit.MedianHours) is { } hours
            ? new BandExit(BandExitState.Forecast, edge, hours, exit.EarliestHours, Within(exit.LatestHours), WearDrift.Level) { Within100HoursChance = soon }
            : new BandExit(BandExitState.BeyondHorizon, edge, null, Within(exit.EarliestHours), null, WearDrift.Level) { Within100HoursChance = soon };
    }

    /// <summary>The present stretch as a line for a picture, carried on some way past the last trial unless a new baseline has ended it.</summary>
    public static DriftLine Line(WearDrift drift, BandExit exit, bool goesOn)
    {
        var span = Math.Max(drift.LastTrialHours - drift.FirstHours, 50);
        var ahead = Math.Clamp(exit.HoursFromLastTrial ?? span / 2, span / 4, span);
        var end = drift.LastTrialHours + (goesOn ? ahead * 1.1 : 0);
        var hours = Enumerable.Range(0, LineSamples + 1)
            .Select(i => drift.FirstHours + ((end - drift.FirstHours) * i / LineSamples))
            .Append(drift.LastTrialHours).Distinct().Order();
        return new DriftLine(
            WearDrift.Level,
            [
                .. hours.Select(h =>
                {
                    var level = drift.At(h);
                    return new DriftPoint(h, level.Value, level.Low, level.High, h > drift.LastTrialHours);
                }),
            ]);
    }

    private static BandEdge LikelierEdge(Statistics.Drift.BandExit top, Statistics.Drift.BandExit bottom)
    {
        var (up, down) = (top.ChanceWithin(HorizonHours), bottom.ChanceWithin(HorizonHours));
        return down > up || (down == up && bottom.MedianHours < top.MedianHours) ? BandEdge.Bottom : BandEdge.Top;
    }

    private static bool Tells(TrialFinding trial) =>
        trial.SetAside is null or SetAsideReason.LimiterReached or SetAsideReason.HoursUnknown or SetAsideReason.OtherConditions;

    private static double? Besides(IReadOnlyList<TrialFinding> trials, TrialFinding last) =>
        trials.LastOrDefault(Tells) is { } later && later != last ? later.TurnedRpm
        : last is { Normalised: false, Reference: { } reference } ? reference.Rpm
        : null;

    private static double Margin(double rpm, double low, double high) => Math.Min(high - rpm, rpm - low);
}
