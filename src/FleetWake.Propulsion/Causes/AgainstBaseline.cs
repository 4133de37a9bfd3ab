using FleetWake.Propulsion.OpenWater;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Propulsion.Causes;

/// <summary>Trials of one boat with one prop held against the first of them, and what they point to.</summary>
/// <param name="Changes">The changes, one a trial.</param>
/// <param name="Models">The ways in which the boat may answer, about its baseline.</param>
/// <param name="Finding">What the changes point to.</param>
public sealed record AgainstBaseline(IReadOnlyList<WideOpenChange> Changes, IReadOnlyList<ResponseModel> Models, CauseFinding Finding)
{
    /// <summary>The last so many trials are weighed: what a boat did long before is another change than the present one.</summary>
    public const int MostTrials = 12;

    /// <summary>A change beyond this is another boat or a wrong reading [1], as a natural logarithm: +49 % or -33 %. Judgement, no source.</summary>
    public const double LargestChange = 0.4;

    /// <summary>Expanded area ratio of an outboard's prop where nobody tells [1]. Common practice, no source; RPM and speed hardly depend on it.</summary>
    private const double UsualAreaRatio = 0.55;

    private const int UsualBlades = 3;

    /// <summary>Doubt of the baseline itself, which every change shares.</summary>
    public ChangeDoubt Baseline { get; init; }

    private const string One = "one";

    /// <summary>Holds trials against the first; null where <see cref="Attempt"/> tells why they cannot be.</summary>
    /// <param name="trials">Trials at wide-open throttle in their order, and whether somebody read the air of each.</param>
    /// <param name="gear">Gear ratio.</param>
    /// <param name="prop">The prop; its diameter is needed.</param>
    /// <param name="response">The response that the trials were corrected by.</param>
    /// <param name="watched">Somebody watched for a prop that draws air; without it, that no trial tells of it says nothing.</param>
    public static AgainstBaseline? Of(IReadOnlyList<(CorrectedTrial Trial, bool AirRead)> trials, GearRatio gear, PropData prop, BoatResponse response, bool watched = false) =>
        Attempt(trials, gear, prop, response, watched).Held;

    /// <summary>Holds trials against the first, or tells why they cannot be.</summary>
    /// <param name="trials">Trials at wide-open throttle in their order, and whether somebody read the air of each.</param>
    /// <param name="gear">Gear ratio.</param>
    /// <param name="prop">The prop; its diameter is needed.</param>
    /// <param name="response">The response that the trials were corrected by.</param>
    /// <param name="watched">Somebody watched for a prop that draws air; without it, that no trial tells of it says nothing.</param>
    /// <returns>One of the two, never both: the comparison, or the reason that there is none. With several trials that cannot be compared, the last one's.</returns>
    /// <exception cref="ArgumentException">A trial at part throttle or held by the limiter.</exception>
    public static (AgainstBaseline? Held, WhyNotCompared? Why) Attempt(
        IReadOnlyList<(CorrectedTrial Trial, bool AirRead)> trials, GearRatio gear, PropData prop, BoatResponse response, bool watched = false)
    {
        ArgumentNullException.ThrowIfNull(trials);
        ArgumentNullException.ThrowIfNull(prop);
        ArgumentNullException.ThrowIfNull(response);
        if (trials.Count < 2) return (null, WhyNotCompared.NoTrial);
        if (prop.Diameter is not { Metres: > 0 } diameter) return (null, WhyNotCompared.NoDiameter);
        if (trials[0].Trial.SpeedKnots is not { Value: > 0 } speed) return (null, WhyNotCompared.NoSpeed);
        if (ModelsAbout(trials[0].Trial.Rpm.Value, speed.Value, gear, prop, diameter, response) is not { } models) return (null, WhyNotCompared.BaselineMakesNoSense);
        var all = trials.Skip(1).TakeLast(MostTrials).Select(t => WideOpenChange.Between(One, One, t.Trial, trials[0].Trial, response)).ToList();
        var changes = all.Where(change => Hindrance(change) is null).ToList();
        if (changes.Count == 0) return (null, Hindrance(all[^1]));
        var baseline = ChangeDoubt.Of(trials[0].Trial, response);
        if (!(baseline.Rpm < LargestChange && baseline.Speed < LargestChange)) return (null, WhyNotCompared.DoubtTooLarge);
        var finding = Diagnosis.Of(new CauseCase
        {
            Models = models,
            Baselines = [new BoatBaseline(One, One, baseline)],
            WideOpen = changes,
            AirUnread = trials.Any(t => !t.AirRead),
            VentilationSeen = trials.Any(t => t.Trial.Doubts.Contains(TrialDoubt.Ventilation)) ? true : watched ? false : null,
        });
        return (new AgainstBaseline(changes, models, finding) { Baseline = baseline }, null);
    }

    private static IReadOnlyList<ResponseModel>? ModelsAbout(double rpm, double knots, GearRatio gear, PropData prop, Length diameter, BoatResponse response)
    {
        var ratio = prop.Pitch.Metres / diameter.Metres;                                           // P/D [1]
        var n = PropRate.Of(EngineRate.FromRevolutionsPerMinute(rpm), gear).RevolutionsPerSecond;  // [rev/s]
        var J = Speed.FromKnots(knots).MetresPerSecond / (n * diameter.Metres);                    // [1]
        return ratio is > 0.1 and < 3 && J / ratio is > 0.2 and < 0.98
            && ResponseModels.Found(new BladeShape(Math.Clamp(prop.Blades ?? UsualBlades, 2, 7), UsualAreaRatio, ratio), J, response.Gain) is { Count: > 0 } models
            ? models
            : null;
    }

    /// <summary>What keeps a change from being weighed; null when nothing does.</summary>
    private static WhyNotCompared? Hindrance(WideOpenChange change) =>
        !(Math.Abs(change.LnRpm) < LargestChange && Math.Abs(change.LnSpeed ?? 0) < LargestChange) ? WhyNotCompared.ChangeTooLarge
        : change.Doubt.Rpm is > 0 and < LargestChange && (change.LnSpeed is null || change.Doubt.Speed is > 0 and < LargestChange) ? null
        : WhyNotCompared.DoubtTooLarge;
}

/// <summary>Why trials are not held against their baseline.</summary>
public enum WhyNotCompared
{
    /// <summary>There is no trial beside the baseline.</summary>
    NoTrial,

    /// <summary>The prop's diameter is not known.</summary>
    NoDiameter,

    /// <summary>No speed was read at the baseline, or the boat stood still.</summary>
    NoSpeed,

    /// <summary>
    /// Pitch, gear and speed of the baseline make no sense together (slip below 2 or above 80 %, or no open-water series that makes
    /// sense of them): the pitch on record is not the one that turned, or one of them is not what it seems.
    /// </summary>
    BaselineMakesNoSense,

    /// <summary>RPM or speed changed by 40 % or more, as a natural logarithm: another boat, or a wrong reading.</summary>
    ChangeTooLarge,

    /// <summary>The doubt of the trial is none or above 40 %: nothing can be weighed by it.</summary>
    DoubtTooLarge,
}
