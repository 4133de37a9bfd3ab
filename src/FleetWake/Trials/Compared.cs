using FleetWake.Commands;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>A trial held against the boat's baseline.</summary>
/// <param name="Held">The comparison; null when the two cannot be compared.</param>
/// <param name="Why">Why not; null when they can.</param>
internal sealed record Compared(AgainstBaseline? Held, string? Why)
{
    /// <summary>The comparison of two trials of one boat with one prop.</summary>
    /// <exception cref="CommandException">A trial at part throttle or held by the limiter, which shows no change.</exception>
    public static Compared Of(TrialAnswer now, TrialAnswer baseline, bool watched)
    {
        foreach (var (answer, name) in new[] { (now, "the trial"), (baseline, "the baseline") })
            if (answer.Trial.Doubts.FirstOrDefault(d => d is TrialDoubt.PartThrottle or TrialDoubt.LimiterReached) is var doubt and not TrialDoubt.SingleRun)
                throw new CommandException($"--baseline: {name} cannot be compared, {DoubtWords.Of(doubt)}.");
        if (now.Reading is not { Engine.Gear: { } gear, Prop: { Diameter: not null } prop })
            return new Compared(null, $"say gear=RATIO in {EngineOption.Name} and the size in {PropOption.Name}");
        var held = AgainstBaseline.Of(
            [(baseline.Trial, AirRead(baseline)), (now.Trial, AirRead(now))], gear, prop, now.Reading.Response, watched);
        return held is not null
            ? new Compared(held, null)
            : new Compared(null, "both need a speed, and gear ratio, pitch and speed of the baseline must go together (slip of 2 to 80 %)");
    }

    /// <summary>In words.</summary>
    public string Sentence()
    {
        if (Held is not { } held) return $"Against the baseline: not compared; {Why}.";
        var change = held.Changes[0];
        var speed = change.LnSpeed is { } v ? $", {100 * v:+0.0;-0.0;0.0} % speed" : "";
        var words = CauseWords.Of(held.Finding);
        return $"Against the baseline: {100 * change.LnRpm:+0.0;-0.0;0.0} % RPM{speed}.{(words.Length > 0 ? words : " The change lies within the doubt, or fits no one group: that is not the same as sound.")}";
    }

    private static bool AirRead(TrialAnswer answer) => answer.Reading.Conditions.Air?.Temperature is not null;
}
