using FleetWake.Logbook.Findings;
using FleetWake.Statistics;

namespace FleetWake.Reports.Pictures;

/// <summary>What a strike, a repitch or the like did to the RPM, in words.</summary>
public static class StepWords
{
    /// <summary>A step with its interval, e.g. <c>+85 RPM (20 to 150)</c>.</summary>
    /// <param name="rpm">The step [RPM].</param>
    public static string Of(Estimate rpm)
    {
        ArgumentNullException.ThrowIfNull(rpm);
        return $"{rpm.Value:+0;-0;0} RPM ({rpm.Low:0} to {rpm.High:0})";
    }

    /// <summary>The same as a clause: what happened, when, and what it did.</summary>
    /// <param name="mounting">The mounting.</param>
    /// <param name="step">The step.</param>
    public static string Clause(MountingFinding mounting, StepShown step)
    {
        ArgumentNullException.ThrowIfNull(mounting);
        ArgumentNullException.ThrowIfNull(step);
        var what = string.Join(" + ", step.What.Select(Phrases.Plain));
        var strike = Kinds(mounting, step).All(k => k == HistoryMarkKind.Strike);
        var subject = strike && step.What.Count == 1 ? $"strike of {step.On:yyyy-MM-dd}" : $"{what} of {step.On:yyyy-MM-dd}";
        if (!step.ShownByTrials || (step.Rpm.Low <= 0 && step.Rpm.High >= 0)) return $"{subject}: no change of RPM that the trials can tell ({step.Rpm.Low:+0;-0;0} to {step.Rpm.High:+0;-0;0})";
        return strike && step.Rpm.Low > 0 ? $"{subject} cost {Of(step.Rpm)}" : $"{subject}: {Of(step.Rpm)}";
    }

    /// <summary>Kinds of what happened in a step.</summary>
    internal static IReadOnlyList<HistoryMarkKind> Kinds(MountingFinding mounting, StepShown step) =>
        [.. mounting.Marks.Where(m => m.On >= step.On && step.What.Contains(m.Label)).Select(m => m.Kind)];
}
