using FleetWake.Commands;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Atmosphere;
using FleetWake.Propulsion.Logs;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>What was asked of a trial at the command line.</summary>
/// <param name="Engine">The engine.</param>
/// <param name="Prop">The prop; null when not given.</param>
internal sealed record TrialRequest(EngineData Engine, PropData? Prop)
{
    public AirState? Air { get; init; }

    public Water? Water { get; init; }

    public Length? Depth { get; init; }

    public Mass? Load { get; init; }

    public double? TrimDegrees { get; init; }

    public bool PartThrottle { get; init; }

    /// <summary>The limiter held the engine in every run, which a log does not say.</summary>
    public bool LimiterReached { get; init; }

    /// <summary>The prop drew air, which a log does not say.</summary>
    public bool Ventilated { get; init; }

    public BoatResponse Response { get; init; } = BoatResponse.Prior;

    public IReadOnlyList<EngineRate> Rpm { get; init; } = [];

    /// <summary>The option that gives the RPM of a log without it; the baseline has its own.</summary>
    public string RpmOption { get; init; } = "--rpm";

    public PlateauRules Rules { get; init; } = PlateauRules.Usual;

    /// <summary>What the trial of a log means.</summary>
    /// <param name="log">The log.</param>
    /// <param name="file">What it is called, for a refusal.</param>
    /// <param name="baseline">Conditions of the trial that this one is held against; null when there is none.</param>
    /// <exception cref="CommandException">The log holds no run, or a reading cannot be; says why.</exception>
    public TrialAnswer Of(TrialLog log, string file, TrialConditions? baseline = null)
    {
        try
        {
            var recorded = RecordedRuns.Of(log, Rules, Rpm);
            if (recorded.Runs.Count == 0) throw new CommandException($"no run of a trial in {file}: {Why(log, recorded)}.");
            var conditions = new TrialConditions
            {
                Air = AirOption.Over(Air, log.Air),
                Water = Water,
                WaterDepth = Depth,
                Load = Load,
                TrimDegrees = TrimDegrees,
            };
            var runs = recorded.Runs.Select(run => run with
            {
                LimiterReached = run.LimiterReached || LimiterReached,
                Ventilated = run.Ventilated || Ventilated,
            }).ToArray();
            var reading = new TrialReading(runs, conditions, Engine, Prop) { PartThrottle = PartThrottle, Response = Response, Baseline = baseline };
            return new TrialAnswer(log, recorded, reading, TrialCorrection.Of(reading));
        }
        catch (ArgumentException e)
        {
            // The messages of the thinking rooms name what, its value and what it may be; the runtime adds lines of its own.
            throw new CommandException(Of(e) + string.Join("; ", e.Message.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)));
        }
    }

    /// <summary>The rates that were given are the one thing here that another option than the file's may have got wrong.</summary>
    private string Of(ArgumentException e) => e.ParamName == "given" ? $"{RpmOption}: " : "";

    private string Why(TrialLog log, RecordedRuns recorded)
    {
        var reasons = log.Dropped.Take(3).Select(line => $"line {line.Line}: {line.Reason}");
        if (log.DroppedCount > 3) reasons = reasons.Append($"{log.DroppedCount} lines dropped in all");
        var without = Rpm.Count == 0 && log.TypedRuns.Count == 0 && log.Rates.Count == 0 && log.Track.Count > 0;
        if (without) reasons = reasons.Append($"give {RpmOption} 5600, or one for each run, {RpmOption} 5600,5580");
        reasons = recorded.Remarks.Concat(reasons).Concat(log.Notices.Select(notice => notice.Detail));
        return string.Join("; ", reasons);
    }
}

/// <summary>What a trial means, with all that it was made of.</summary>
/// <param name="Log">The log.</param>
/// <param name="Recorded">The runs in it.</param>
/// <param name="Reading">The trial as read.</param>
/// <param name="Trial">The trial at reference conditions.</param>
internal sealed record TrialAnswer(TrialLog Log, RecordedRuns Recorded, TrialReading Reading, CorrectedTrial Trial);
