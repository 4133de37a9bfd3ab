using FleetWake.Logbook;
using FleetWake.Logbook.Findings;
using FleetWake.Logbook.Inspections;
using FleetWake.Logbook.Props;
using FleetWake.Statistics;

namespace FleetWake.Reports.Tests;

/// <summary>
/// A mounting with trials at even hours, and a plain least-squares line over its last stretch. The line is only there to be
/// drawn and worded: its interval is two standard errors, which no test here takes for a method.
/// </summary>
internal sealed record Fitted(double Low, double High, double[] Rpm, double FirstHours, double Every)
{
    public Position Where { get; init; } = Logbook.Position.Single;

    public string Prop { get; init; } = "P-07";

    public double? FittedAt { get; init; }

    public int StretchFrom { get; init; }

    public bool Drifts { get; init; } = true;

    public double? PresentRpm { get; init; }

    public string[] Causes { get; init; } = [];

    public HistoryMark[] Marks { get; init; } = [];

    public OpenStrike[] Strikes { get; init; } = [];

    public Dictionary<int, SetAsideReason> SetAside { get; init; } = [];

    public DateOnly LookedAt { get; init; } = SkerryBay.Monday.AddDays(-40);

    public Verdict Verdict { get; init; } = Verdict.Fit;

    public PositionFinding Position()
    {
        var trials = Rpm.Select((rpm, i) => new TrialFinding(
            SkerryBay.Id(i + 1),
            SkerryBay.Monday.AddDays(-7 * (Rpm.Length - i)),
            SetAside.GetValueOrDefault(i, (SetAsideReason)(-1)) == SetAsideReason.HoursUnknown ? null : FirstHours + (i * Every),
            false, rpm, 24, 11, i < StretchFrom ? 0 : StretchFrom > 0 ? 1 : 0, SetAside.TryGetValue(i, out var why) ? why : null, [])).ToList();
        var present = trials.Where(t => t.SetAside is null && t.Stretch == (StretchFrom > 0 ? 1 : 0)).ToList();
        var (drift, line) = present.Count < 3 ? (null, null) : Fit(present);
        var observed = trials.LastOrDefault(t => t.SetAside != SetAsideReason.PartThrottle)?.Rpm;
        var now = PresentRpm ?? line?.Points.Last(p => !p.Forecast).Rpm ?? observed;
        var state = now is not { } n ? BandState.NotKnown : n > High ? BandState.AboveTop : n < Low ? BandState.BelowBottom : BandState.InBand;
        var margin = now is { } m ? Math.Min(High - m, m - Low) : (double?)null;
        var band = new BandStanding(state, observed, now, margin, now is { } e ? High - e < e - Low ? BandEdge.Top : BandEdge.Bottom : null);
        var mounting = new MountingFinding(
            "mounting-1", new PropCard(Prop, 13.25, 17, 3, PropMaterial.Stainless), new DateOnly(2026, 5, 1), FittedAt, trials, Marks,
            present.Count > 0 ? present[0].Rpm : null, drift, line, band, Exit(state, drift, now), Causes);
        return new PositionFinding(
            Where, new EngineCard("engine-1", "Invented 60", Low, High, 2.15, null, null, 10), trials.LastOrDefault()?.Hours, mounting, Strikes,
            new InspectionCard(LookedAt, Verdict, []), LookedAt)
        {
            Uncleared = Verdict == Verdict.TakeOff ? [new InspectionCard(LookedAt, Verdict, [])] : [],
        };
    }

    private BandExit Exit(BandState state, Estimate? drift, double? now)
    {
        if (now is not { } n) return new BandExit(BandExitState.NotKnown);
        if (state is BandState.AboveTop or BandState.BelowBottom) return new BandExit(BandExitState.AlreadyOutside);
        if (drift is null) return new BandExit(BandExitState.TooFewTrials);
        if (!Drifts) return new BandExit(BandExitState.NoDriftShown);
        var up = drift.Value > 0;
        var room = up ? High - n : n - Low;
        double Reach(double rate) => 100 * room / Math.Abs(rate);
        var (slow, fast) = up ? (drift.Low, drift.High) : (drift.High, drift.Low);
        return new BandExit(BandExitState.Forecast, up ? BandEdge.Top : BandEdge.Bottom, Reach(drift.Value), Reach(fast), slow * drift.Value > 0 ? Reach(slow) : null, 0.8);
    }

    private static (Estimate, DriftLine) Fit(List<TrialFinding> trials)
    {
        var x = trials.Select(t => t.Hours!.Value).ToArray();
        var (mx, my) = (x.Average(), trials.Average(t => t.Rpm));
        var sxx = x.Sum(v => (v - mx) * (v - mx));
        var slope = trials.Sum(t => (t.Hours!.Value - mx) * (t.Rpm - my)) / sxx;
        var s = Math.Sqrt(Math.Max(25, trials.Sum(t => Math.Pow(t.Rpm - my - (slope * (t.Hours!.Value - mx)), 2)) / Math.Max(1, trials.Count - 2)));
        var se = s / Math.Sqrt(sxx);
        DriftPoint At(double h)
        {
            var (mean, half) = (my + (slope * (h - mx)), 1.5 * s * Math.Sqrt((1.0 / trials.Count) + ((h - mx) * (h - mx) / sxx)));
            return new DriftPoint(h, mean, mean - half, mean + half, h > x[^1]);
        }

        var hours = Enumerable.Range(0, 41).Select(i => x[0] + (i * (x[^1] - x[0]) / 40)).Concat(Enumerable.Range(1, 40).Select(i => x[^1] + (i * 10.0)));
        return (new Estimate(100 * slope, 100 * se, 100 * (slope - (1.5 * se)), 100 * (slope + (1.5 * se)), 0.8), new DriftLine(0.8, [.. hours.Select(At)]));
    }
}
