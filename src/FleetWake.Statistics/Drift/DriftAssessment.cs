namespace FleetWake.Statistics.Drift;

/// <summary>What the trials of one mounting say about its drift.</summary>
public sealed record DriftAssessment
{
    /// <summary>
    /// The least that own trials must have added [nat]. Judgement: of two normals with one mean that is about a quarter of the
    /// prior's variance gone.
    /// </summary>
    public const double LeastOwnEvidenceNats = 0.02;

    /// <summary>The drift [rpm per 100 engine hours] with its 80 % interval: posterior mean, sd, 10 % and 90 % points.</summary>
    public required Estimate RpmPer100Hours { get; init; }

    /// <summary>Weight of each drift on <see cref="SlopeGrid"/> after all trials.</summary>
    public required IReadOnlyList<double> Weights { get; init; }

    /// <summary>When it leaves the band at its upper end; null without a trial or without a band.</summary>
    public BandExit? Exit { get; init; }

    /// <summary>When it leaves the band at its lower end; null without a trial or without a band.</summary>
    public BandExit? ExitBelow { get; init; }

    /// <summary>Level at the last trial under reference conditions [1/min]; null without a trial.</summary>
    public Estimate? LevelRpm { get; init; }

    /// <summary>What happened to the level between trials, in the order of time; empty without an event between two of them.</summary>
    public IReadOnlyList<StepEffect> Steps { get; init; } = [];

    /// <summary>For each trial of the series as given: chance that it is a gross error [1]; 0 for one left aside.</summary>
    public IReadOnlyList<double> GrossChances { get; init; } = [];

    /// <summary>log density of the trials, the drift weighed by its prior; 0 without a trial.</summary>
    public double LogEvidence { get; init; }

    /// <summary>Trials that counted.</summary>
    public int Trials { get; init; }

    /// <summary>
    /// What the mounting's own trials have added about its drift [nat]: Kullback-Leibler divergence of the posterior's weights
    /// from the prior's. 0 when they say nothing.
    /// </summary>
    public double OwnEvidenceNats { get; init; }

    /// <summary>
    /// The interval is the fleet's and not this mounting's: fewer than two trials, all at one hour, or
    /// <see cref="OwnEvidenceNats"/> below <see cref="LeastOwnEvidenceNats"/>. No date may be drawn from it.
    /// </summary>
    public bool PriorOnly { get; init; }

    /// <summary>Hours went back somewhere; the highest reading so far was taken in place of each lower one.</summary>
    public bool HoursFell { get; init; }

    /// <summary>The level by drift at the last trial; null without a trial.</summary>
    internal Levels? Levels { get; init; }

    /// <summary>The level at another time, under reference conditions [1/min], over all drifts, with 80 % limits.</summary>
    /// <param name="hoursFromLastTrial">
    /// Hours after the last trial [h], or before it when negative. Only as far back as the last event before it: an earlier
    /// level stood on the other side of a step. The drift is taken to be even, and no event to come.
    /// </param>
    /// <returns>Null without a trial, and for hours that are not finite or further away than any engine runs.</returns>
    public Estimate? LevelAt(double hoursFromLastTrial)
    {
        if (Levels is null || !(Math.Abs(hoursFromLastTrial) < 1e6)) return null;
        var (mean, sd) = Levels.Whole(hoursFromLastTrial);
        return Estimates.Normal(mean, sd);
    }
}
