namespace FleetWake.Statistics.Drift;

/// <summary>
/// What one more trial would decide: the reading that it may give is foretold from what is known, and for each reading it is
/// worked out what would then be known (preposterior analysis: Raiffa and Schlaifer 1961, Applied Statistical Decision Theory;
/// for doubt removed Lindley 1956, Annals of Mathematical Statistics 27:986; both from memory).
/// </summary>
/// <remarks>
/// The trial is taken to be a good one under reference conditions, and the level given the drift to be normal. A strike or
/// work on the prop since the last trial counts with all that it may have done. Pure.
/// </remarks>
public static class NextTrial
{
    /// <summary>Values one more trial of a mounting.</summary>
    /// <param name="found">What its trials so far say.</param>
    /// <param name="settings">What that was assessed with.</param>
    /// <param name="series">The history that was assessed.</param>
    /// <param name="plan">When and with what the trial would be run, and what hangs on it.</param>
    /// <returns>Never a NaN. Without a trial so far, what the first would tell about the level.</returns>
    public static NextTrialValue Of(DriftAssessment found, DriftSettings settings, DriftSeries series, NextTrialPlan plan)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(plan);
        plan = plan.InRange();
        var sound = SoundSeries.Of(series);
        if (NextReading.Of(found, settings, sound, plan) is not { } reading) return new(0, 0, null);
        var changes = sound.HasBand ? reading.CrossesChance(plan.ActAtChance) : 0;
        return new(changes, reading.DoubtRemovedShare(), LeastDriftShown(found, settings, series, plan, reading.FleetVariance));
    }

    /// <summary>The 80 % limit of a drift leaves out zero when it is 1.28 standard errors away: by the likelihood's precision alone.</summary>
    private static double? LeastDriftShown(DriftAssessment found, DriftSettings settings, DriftSeries series, NextTrialPlan plan, double fleetVariance)
    {
        var weeks = series.Trials.Select(t => t.Week).Concat(series.Events.Select(e => e.Week)).Where(double.IsFinite);
        var before = SoundSeries.Of(series).Trials;
        var hours = before.Length > 0 ? before[^1].EngineHours : 0;
        var rpm = found.Levels?.Origin ?? 1; // what it reads is of no consequence for how well it tells
        var next = new DriftTrial(weeks.DefaultIfEmpty(0).Max() + 1, hours + plan.ShownHoursAhead!.Value, rpm);
        var sound = SoundSeries.Of(series with { Trials = [.. series.Trials, next] });
        if (sound.Trials.Length < 2) return null;
        var design = Design.Of(sound, settings, sound.Trials.Length);
        // Readings that fall on the same step of a gauge share their error, so that its doubt is a floor and not averaged out.
        var fine = Math.Max(fleetVariance, plan.GaugeSdRpm * plan.GaugeSdRpm);
        var gross = fine + (design.MedianRpm * design.MedianRpm * settings.GrossShare * settings.GrossShare);
        var set = Array.ConvertAll(sound.Places, i => i < found.GrossChances.Count && found.GrossChances[i] > 0.5);
        var precision = new NodeFit(design, NoiseNode.Of(0, fine, gross), set).Base().Xx;
        var least = Estimates.Z10 / Math.Sqrt(precision);
        return least <= SlopeGrid.Highest ? least : null;
    }
}
