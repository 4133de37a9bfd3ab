using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Entries;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion;
using FleetWake.Statistics;

namespace FleetWake.Logbook.Engines;

/// <summary>The error of an engine's tachometer while it did not change, by one check or several.</summary>
/// <param name="Since">The check that it is known from. The first of an engine holds for what was read before it, too.</param>
/// <param name="FirstRpm">What that check showed too much [RPM].</param>
/// <param name="Error">What the gauge shows over what is true, less one [1], over all checks that agree.</param>
internal sealed record GaugeError(Entry Since, double FirstRpm, Uncertain Error);

/// <summary>
/// Tells the errors of a tachometer from its checks. A check that differs from the one before by no more than the gauge's step
/// says the same again, so that their mean counts from the first of them on: a trial must not move because a gauge was read twice.
/// </summary>
internal static class GaugeErrors
{
    /// <summary>A gauge further off than this is broken or set to another engine's pulses [1]: what it showed is not believed. Common practice, no source.</summary>
    public const double Most = 0.5;

    /// <summary>The errors in order of time; none when the gauge was never checked.</summary>
    public static IReadOnlyList<GaugeError> Of(BoatHistory history, string engine)
    {
        var step = history.EngineCards.GetValueOrDefault(engine)?.TachometerStepRpm ?? TachometerSteps.UnknownRpm;
        var alike = new List<List<TachometerChecked>>();
        foreach (var check in (history.EngineFacts.GetValueOrDefault(engine) ?? []).OfType<TachometerChecked>())
        {
            if (alike is [.., var last] && Moved(last[^1], check) <= step) last.Add(check);
            else alike.Add([check]);
        }

        return [.. alike.Select(checks => Mean(checks, step))];
    }

    /// <summary>The error that held at an entry; null when the gauge was never checked.</summary>
    public static GaugeError? At(IReadOnlyList<GaugeError> errors, IComparer<Entry> order, Entry entry) =>
        errors.LastOrDefault(e => order.Compare(e.Since, entry) <= 0) ?? errors.FirstOrDefault();

    private static GaugeError Mean(List<TachometerChecked> checks, double step)
    {
        var mean = checks.Average(c => (c.ShownRpm / c.TrueRpm) - 1);
        // Each check reads the same stepped gauge as a trial does; checks of one speed repeat its rounding and gain nothing.
        var doubt = checks.Min(c => GaugeStep.StandardUncertainty(step) / c.TrueRpm);
        return new GaugeError(checks[0].Entry, Rpm(checks[0]), new Uncertain(mean, doubt));
    }

    private static double Rpm(TachometerChecked check) => check.ShownRpm - check.TrueRpm;

    /// <summary>
    /// By how much the error moved [RPM], at the lower of the two speeds: a gauge shows too much by a share, and a step
    /// is the larger share the slower the engine turned when it was read.
    /// </summary>
    private static double Moved(TachometerChecked before, TachometerChecked check) =>
        Math.Abs((Rpm(check) * before.TrueRpm) - (Rpm(before) * check.TrueRpm)) / Math.Max(before.TrueRpm, check.TrueRpm);
}
