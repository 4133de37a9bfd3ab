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

    public int EveryDays { get; init; } = 7;

    public int StretchFrom { get; init; }

    public bool Drifts { get; init; } = true;

    public double? PresentRpm { get; init; }

    public string[] Causes { get; init; } = [];

    public HistoryMark[] Marks { get; init; } = [];

    /// <summary>Chance that a trial is wrong, by its place; 2 % where nothing is said.</summary>
    public Dictionary<int, double> Wrong { get; init; } = [];

    public StepShown[] Steps { get; init; } = [];

    /// <summary>The evidence, and the place of the trial that raised an alarm.</summary>
    public (double ToOne, int? RaisedAt)? Evidence { get; init; }

    public NextTrialCard? NextTrial { get; init; }

    public OpenStrike[] Strikes { get; init; } = [];

    public Dictionary<int, SetAsideReason> SetAside { get; init; } = [];

    public DateOnly LookedAt { get; init; } = SkerryBay.Monday.AddDays(-40);

    public Verdict Verdict { get; init; } = Verdict.Fit;

    public PositionFinding Position()
    {
        var trials = Rpm.Select((rpm, i) => new TrialFinding(
            SkerryBay.Id(i + 1),
            SkerryBay.Monday.AddDays(-EveryDays * (Rpm.Length - i)),
            SetAside.GetValueOrDefault(i, (SetAsideReason)(-1)) == SetAsideReason.HoursUnknown ? null : FirstHours + (i * Every),
            false, rpm, 24, 11, i < StretchFrom ? 0 : StretchFrom > 0 ? 1 : 0, SetAside.TryGetValue(i, out var why) ? why : null, [])).ToList();
        trials = [.. trials.Select((t, i) => t is { SetAside: null, Hours: not null } ? t with { GrossChance = Wrong.GetValueOrDefault(i, 0.02) } : t)];
        var present = trials.Where(t => t.SetAside is null && t.Stretch == (StretchFrom > 0 ? 1 : 0)).ToList();
        var (own, line) = present.Count < 3 ? (null, null) : Fit(present.FindAll(t => t.GrossChance < 0.5));
        var fleetOnly = own is null && trials.Exists(t => t.SetAside is null);
        var drift = fleetOnly ? FleetsFigure : own;
        var observed = trials.LastOrDefault(t => t.SetAside != SetAsideReason.PartThrottle)?.Rpm;
        var level = PresentRpm ?? line?.Points.Last(p => !p.Forecast).Rpm;

        // The less favourable of the last reading and the trials together, as the record's own findings have it.
        double Margin(double rpm) => Math.Min(High - rpm, rpm - Low);
        var now = observed is { } o && level is { } l ? Margin(o) <= Margin(l) ? o : l : observed;
        var state = now is not { } n ? BandState.NotKnown : n > High ? BandState.AboveTop : n < Low ? BandState.BelowBottom : BandState.InBand;
        var margin = now is { } m ? Margin(m) : (double?)null;
        var band = new BandStanding(state, observed, now, margin, now is { } e ? High - e < e - Low ? BandEdge.Top : BandEdge.Bottom : null);
        var mounting = new MountingFinding(
            "mounting-1", new PropCard(Prop, 13.25, 17, 3, PropMaterial.Stainless), new DateOnly(2026, 5, 1), FittedAt, trials, Marks,
            present.Count > 0 ? present[0].Rpm : null, drift, line, band, Exit(state, own, now), Causes)
        {
            FleetOnly = fleetOnly,
            LevelRpm = level is { } together ? new Estimate(together, 20, together - 26, together + 26, 0.8) : null,
            Steps = Steps,
            NextTrial = NextTrial,
            Watch = Evidence is not { } evidence ? null : new DriftWatch(evidence.ToOne, 3.9, 0.041, 0.033, 0.05, true)
            {
                RaisedAt = evidence.RaisedAt is { } r ? trials[r].Entry : null,
                RaisedOn = evidence.RaisedAt is { } d ? trials[d].On : null,
                RaisedAtHours = evidence.RaisedAt is { } h ? trials[h].Hours : null,
            },
        };
        return new PositionFinding(
            Where, new EngineCard("engine-1", "Invented 60", Low, High, 2.15, null, null, 10), trials.LastOrDefault()?.Hours, mounting, Strikes,
            new InspectionCard(LookedAt, Verdict, []), LookedAt)
        {
            Uncleared = Verdict == Verdict.TakeOff ? [new InspectionCard(LookedAt, Verdict, [])] : [],
        };
    }

    private static readonly Estimate FleetsFigure = new(8, 7, -1, 18, 0.8);

    private BandExit Exit(BandState state, Estimate? drift, double? now)
    {
        if (now is not { } n) return new BandExit(BandExitState.NotKnown);
        if (state is BandState.AboveTop or BandState.BelowBottom) return new BandExit(BandExitState.AlreadyOutside);
        if (drift is null) return new BandExit(BandExitState.TooFewTrials);
        if (!Drifts) return new BandExit(BandExitState.BeyondHorizon) { Within100HoursChance = 0 };
        var up = drift.Value > 0;
        var room = up ? High - n : n - Low;
        double Reach(double rate) => 100 * room / Math.Abs(rate);
        var (slow, fast) = up ? (drift.Low, drift.High) : (drift.High, drift.Low);
        double? latest = slow * drift.Value > 0 ? Reach(slow) : null;
        return new BandExit(BandExitState.Forecast, up ? BandEdge.Top : BandEdge.Bottom, Reach(drift.Value), Reach(fast), latest, 0.8)
        {
            Within100HoursChance = Reach(drift.Value) <= 100 ? 0.7 : 0.2,
            Dates = new BandExitDates(By(Reach(fast)), By(Reach(drift.Value)), latest is { } most ? By(most) : null, 0.8, HoursPerMonth, SkerryBay.Monday.AddDays(-7)),
        };
    }

    private const double HoursPerMonth = 20;

    private static DateOnly By(double hours) => SkerryBay.Monday.AddDays((int)Math.Round(30 * hours / HoursPerMonth));

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
