namespace FleetWake.Statistics.Drift;

/// <summary>What the trials of one mounting say about its drift.</summary>
public sealed record DriftAssessment
{
    /// <summary>The drift [rpm per 100 engine hours] with its 80 % interval: posterior mean, sd, 10 % and 90 % points.</summary>
    public required Estimate RpmPer100Hours { get; init; }

    /// <summary>Weight of each drift on <see cref="SlopeGrid"/> after all trials.</summary>
    public required IReadOnlyList<double> Weights { get; init; }

    /// <summary>When it leaves the band; null without a trial or without a band.</summary>
    public BandExit? Exit { get; init; }

    /// <summary>Level at the last trial under reference conditions [1/min]; null without a trial.</summary>
    public Estimate? LevelRpm { get; init; }

    /// <summary>For each trial of the series as given: chance that it is a gross error [1]; 0 for one left aside.</summary>
    public IReadOnlyList<double> GrossChances { get; init; } = [];

    /// <summary>log density of the trials, the drift weighed by its prior; 0 without a trial.</summary>
    public double LogEvidence { get; init; }

    /// <summary>Trials that counted.</summary>
    public int Trials { get; init; }

    /// <summary>
    /// The interval is the fleet's and not this mounting's: fewer than two trials, or all at one hour. No date may be drawn
    /// from it.
    /// </summary>
    public bool PriorOnly { get; init; }

    /// <summary>Hours went back somewhere; the highest reading so far was taken in place of each lower one.</summary>
    public bool HoursFell { get; init; }
}
