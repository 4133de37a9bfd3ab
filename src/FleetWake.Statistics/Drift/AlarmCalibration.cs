using FleetWake.Statistics.Rates;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// The threshold of a fleet's alarm, and how many false ones it brings: counted in a seeded simulation of mountings without
/// drift on the fleet's own trials. Reality has brought somewhat more than that (see <see cref="DriftAlarm.RecommendedThreshold"/>).
/// </summary>
/// <param name="Threshold">log E_n [1] that raises an alarm.</param>
/// <param name="FalseAlarmsPerBoatYear">
/// Alarms without drift for each year in which a mounting is followed: from its first trial to the alarm, else to its last trial.
/// </param>
/// <param name="Low">Lower limit of that rate, 95 %: the doubt of the simulation alone.</param>
/// <param name="High">Upper limit of it.</param>
/// <param name="BoatYears">Boat-years simulated, each up to the alarm or the last trial.</param>
/// <param name="Mountings">Mountings of the fleet whose trials made the schedule; 0 where it is the usual one.</param>
/// <param name="OwnSchedule">The schedule is the fleet's, not the usual one of eight trials a year.</param>
public sealed record AlarmCalibration(
    double Threshold, double FalseAlarmsPerBoatYear, double Low, double High, double BoatYears, int Mountings, bool OwnSchedule)
{
    /// <summary>Where the draws begin when nobody says otherwise.</summary>
    public const ulong Seed = 5_071_959;

    /// <summary>The highest threshold that is tried: by Ville's bound one mounting in 400 without drift reaches it.</summary>
    public const double HighestThreshold = 6;

    private const double Step = 0.05;
    private const double Confidence = 0.95;
    private const int FewestMountings = 5;

    /// <summary>
    /// Finds the lowest threshold, from the recommended one upward in steps of 0.05, that brings no more false alarms than
    /// wished; <see cref="HighestThreshold"/> with its rate where none does.
    /// </summary>
    /// <param name="schedule">The fleet's mountings; those of fewer than two usable trials are left aside.</param>
    /// <param name="settings">What the fleet takes for granted of a new boat: the RPM are drawn from it.</param>
    /// <param name="atMost">The false alarms wished at most [1/boat-year], above 0.</param>
    /// <param name="seed">Where the draws begin: the same gives the same result.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="atMost"/> is not above 0.</exception>
    public static AlarmCalibration Of(IReadOnlyList<DriftSeries> schedule, DriftSettings settings, double atMost = 0.05, ulong seed = Seed)
    {
        if (!(atMost > 0)) throw new ArgumentOutOfRangeException(nameof(atMost), atMost, "Must lie above 0.");
        var (fleet, own) = Simulate(schedule, settings, seed);
        var steps = (int)Math.Round((HighestThreshold - DriftAlarm.RecommendedThreshold) / Step);
        // Whole steps: sums of 0.05 would end in a tail of digits.
        var thresholds = Enumerable.Range(0, steps + 1).Select(i => Math.Round(DriftAlarm.RecommendedThreshold + (i * Step), 2));
        AlarmCalibration? last = null;
        foreach (var threshold in thresholds)
        {
            last = At(fleet, own, threshold);
            if (last.FalseAlarmsPerBoatYear <= atMost) break;
        }

        return last!;
    }

    /// <summary>What a threshold that somebody chose brings.</summary>
    /// <param name="threshold">The threshold of log E_n [1].</param>
    /// <param name="schedule">As for <see cref="Of"/>.</param>
    /// <param name="settings">As for <see cref="Of"/>.</param>
    /// <param name="seed">As for <see cref="Of"/>.</param>
    public static AlarmCalibration At(double threshold, IReadOnlyList<DriftSeries> schedule, DriftSettings settings, ulong seed = Seed)
    {
        var (fleet, own) = Simulate(schedule, settings, seed);
        return At(fleet, own, threshold);
    }

    private static AlarmCalibration At(SilentFleet fleet, int own, double threshold)
    {
        var (alarms, years) = fleet.At(threshold);
        // Mountings whose trials all fall on one day are followed for no time at all.
        var rate = years > 1e-9 ? PoissonLimits.Rate(new(alarms, years), Confidence) : null;
        return new(threshold, rate?.Value ?? 0, rate?.Low ?? 0, rate?.High ?? 0, years, own, own > 0);
    }

    private static (SilentFleet Fleet, int Own) Simulate(IReadOnlyList<DriftSeries> schedule, DriftSettings settings, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        ArgumentNullException.ThrowIfNull(settings);
        var tried = schedule.Where(Tells).ToArray();
        var own = tried.Length >= FewestMountings ? tried.Length : 0;
        return (SilentFleet.Of(own > 0 ? tried : [Usual()], settings, seed), own);
    }

    /// <summary>Two trials in more than a moment: only then can evidence come, and only then does time pass.</summary>
    private static bool Tells(DriftSeries series)
    {
        var trials = SoundSeries.Of(series).Trials;
        return trials.Length >= 2 && trials[^1].Week > trials[0].Week;
    }

    /// <summary>Twelve trials, eight a year, 120 h a year, an outboard of 5000 to 6000 rpm: common practice, no source.</summary>
    private static DriftSeries Usual() => new(5000, 6000, [.. Enumerable.Range(0, 12).Select(i => new DriftTrial(6.5 * i, 15 * i, 5600))], []);
}
