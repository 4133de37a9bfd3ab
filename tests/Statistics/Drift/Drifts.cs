using CsCheck;
using FleetWake.Statistics.Drift;

namespace FleetWake.Statistics.Tests.Drift;

/// <summary>Invented mountings.</summary>
internal static class Drifts
{
    public static readonly DriftSettings Settings = DriftSettings.Recommended;

    public static readonly SlopePrior Prior = SlopePrior.SoundOrWearing(0.2, 2, 10);

    /// <summary>Series of 1 to 14 trials with events between, hours rising, some readings missing.</summary>
    public static readonly Gen<DriftSeries> Any =
        from n in Gen.Int[1, 14]
        from trials in Gen.Select(Gen.Double[0.1, 9], Gen.Double[0, 60], Gen.Double[5200, 6300], Gen.Double[-5, 35], Gen.Double[-300, 300]).Array[n]
        from events in Gen.Select(Gen.Double[0, 80], Gen.Int[0, 3]).Array[0, 4]
        from missing in Gen.Int[0, 3]
        select new DriftSeries(
            5000,
            6000,
            [.. trials.Select((t, i) => new DriftTrial(
                trials.Take(i + 1).Sum(x => x.Item1), trials.Take(i + 1).Sum(x => x.Item2), Math.Round(t.Item3), missing == 1 ? null : t.Item4, missing == 2 ? null : t.Item5))],
            [.. events.Select(e => new DriftEvent(e.Item1, (StepKind)e.Item2))]);

    public static DriftAssessment Assess(DriftSeries series) => DriftEstimator.Assess(series, Prior, Settings);

    /// <summary>A prop that gains RPM steadily, with a little scatter that is always the same.</summary>
    public static DriftSeries Steady(int trials, double rpmPer100Hours, double hoursBetween = 25) => new(5000, 6000, [.. Enumerable.Range(0, trials).Select(i =>
        new DriftTrial(5 * i, hoursBetween * i, 5600 + (rpmPer100Hours * hoursBetween * i / 100) + (30 * Math.Sin(12.9898 * (i + 1)))))], []);

    public static void Same(Estimate expected, Estimate actual, double within = 1e-6)
    {
        Assert.Equal(expected.Value, actual.Value, within);
        Assert.Equal(expected.Low, actual.Low, within);
        Assert.Equal(expected.High, actual.High, within);
    }

    /// <summary>All that an assessment says, but for the trials' and events' places.</summary>
    public static void SameInAll(DriftAssessment expected, DriftAssessment actual, double within = 1e-6)
    {
        Same(expected.RpmPer100Hours, actual.RpmPer100Hours, within);
        Assert.All(expected.Weights.Zip(actual.Weights), p => Assert.Equal(p.First, p.Second, within));
        Assert.Equal(expected.LogEvidence, actual.LogEvidence, within);
        Assert.Equal(expected.OwnEvidenceNats, actual.OwnEvidenceNats, within);
        Assert.Equal(expected.PriorOnly, actual.PriorOnly);
        Assert.Equal(expected.Steps.Count, actual.Steps.Count);
        // A level stands thousands high and an hour may lie in the flat of a curve.
        if (expected.LevelRpm is not null) Same(expected.LevelRpm, actual.LevelRpm!, 1000 * within);
        foreach (var (a, b) in expected.Steps.Zip(actual.Steps)) Same(a.Rpm, b.Rpm, 1000 * within);
        foreach (var (a, b) in new[] { (expected.Exit, actual.Exit), (expected.ExitBelow, actual.ExitBelow) })
        {
            foreach (var hours in new[] { 0, 100, 500, 2000 }) Assert.Equal(a?.ChanceWithin(hours) ?? 0, b?.ChanceWithin(hours) ?? 0, Math.Max(within, 2e-7));
        }
    }

    public static void Sound(DriftAssessment a, DriftSeries series)
    {
        var d = a.RpmPer100Hours;
        Assert.True(double.IsFinite(d.Value) && double.IsFinite(d.StandardError) && d.StandardError > 0, $"{d}");
        Assert.True(d.Low <= d.High && d.Low >= SlopeGrid.Lowest - 0.5 && d.High <= SlopeGrid.Highest + 0.5, $"{d}");
        Assert.Equal(1, a.Weights.Sum(), 1e-9);
        Assert.Equal(series.Trials.Count, a.GrossChances.Count);
        Assert.All(a.GrossChances, g => Assert.InRange(g, 0, 1));
        Assert.True(double.IsFinite(a.LogEvidence));
        if (a.LevelRpm is { } l) Assert.True(double.IsFinite(l.Value) && double.IsFinite(l.StandardError));
        Assert.InRange(a.OwnEvidenceNats, 0, 1000);
        Assert.All(a.Steps, step =>
        {
            Assert.True(double.IsFinite(step.Rpm.Value) && double.IsFinite(step.Rpm.StandardError) && step.Rpm.StandardError > 0, $"{step.Rpm}");
            Assert.InRange(step.OwnEvidenceNats, 0, 1e6);
            Assert.All(step.Events, e => Assert.NotEqual(StepKind.None, series.Events[e].Kind));
        });
        if (a.LevelAt(100) is { } ahead) Assert.True(double.IsFinite(ahead.Value) && double.IsFinite(ahead.StandardError));
        Assert.Equal(a.Exit is null, a.ExitBelow is null);
        if (a.Exit is not null) Sound(a.Exit);
        if (a.ExitBelow is not null) Sound(a.ExitBelow);
    }

    public static void Sound(NextTrialValue v)
    {
        Assert.InRange(v.ChangesDecisionChance, 0, 1);
        Assert.InRange(v.DoubtRemovedShare, 0, 1);
        if (v.LeastDriftShown is { } least) Assert.InRange(least, 0, SlopeGrid.Highest);
    }

    private static void Sound(BandExit e)
    {
        Assert.True(0 <= e.EarliestHours && e.EarliestHours <= e.MedianHours && e.MedianHours <= e.LatestHours && e.LatestHours <= BandExit.HorizonHours, $"{e}");
        Assert.InRange(e.Within500HoursChance, 0, 1);
    }
}
