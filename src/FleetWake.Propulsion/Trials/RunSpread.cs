namespace FleetWake.Propulsion.Trials;

/// <summary>What the spread of runs and the scatter within them say about a mean.</summary>
internal static class RunSpread
{
    /// <summary>
    /// Variance of one run, from what is usual and what this trial shows: (nu_0 s_0^2 + Q)/(nu_0 + nu), the mean of a scaled
    /// inverse chi-squared posterior but for its -2 (Gelman et al., Bayesian Data Analysis, section 2.6, from memory).
    /// </summary>
    internal static double OfOneRun(double usual, in Opposition opposition, ReadOnlySpan<double> values)
    {
        var (nu_0, nu) = (TrialNoise.RunsWorth, opposition.DegreesOfFreedom);
        var Q = opposition.RemovesCurrent ? opposition.Scatter(values) : 0; // without a way back the spread is current
        return ((nu_0 * usual * usual) + Q) / (nu_0 + (opposition.RemovesCurrent ? nu : 0));
    }

    /// <summary>Variance of a run's own mean, from the scatter of its readings.</summary>
    /// <param name="scatter">One standard deviation of the readings.</param>
    /// <param name="held">How long they were taken; null counts as one reading.</param>
    internal static double WithinRun(double scatter, TimeSpan? held) =>
        scatter * scatter / Math.Max(1, (held?.TotalSeconds ?? 0) / TrialNoise.SecondsApart);

    /// <summary>Held, but for so short a time that it has not settled.</summary>
    internal static bool IsShort(RunReading run) => run.Held is { TotalSeconds: < TrialLimits.SettledSeconds };
}
