using System.Globalization;
using FleetWake.Logbook.Findings;
using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Trials;

/// <summary>A trial held against the boat's baseline, or why it is not.</summary>
/// <param name="Held">The comparison; null when the two cannot be compared.</param>
/// <param name="Not">Why not; null when they can.</param>
internal sealed record Compared(AgainstBaseline? Held, NotCompared? Not)
{
    /// <summary>The comparison of two trials of one boat with one prop.</summary>
    /// <param name="now">The trial.</param>
    /// <param name="baseline">The one that it is held against.</param>
    /// <param name="watched">Somebody watched, and the prop drew no air.</param>
    public static Compared Of(TrialAnswer now, TrialAnswer baseline, bool watched) =>
        Weighed(now, baseline, watched) with { Notes = [.. Baseline(now, baseline)] };

    private static Compared Weighed(TrialAnswer now, TrialAnswer baseline, bool watched)
    {
        if ((NoRpm(now, "the trial") ?? NoRpm(baseline, "the baseline")) is { } none) return new Compared(null, none);
        if (now.Reading.Engine.Gear is not { } gear) return Without("no_gear", $"the gear ratio is not known: say gear=RATIO in {EngineOption.Name}");
        if (now.Reading.Prop is not { } prop) return Without("no_prop", $"the prop is not known: give its size in {PropOption.Name}");
        var (held, why) = AgainstBaseline.Attempt([(baseline.Trial, AirRead(baseline)), (now.Trial, AirRead(now))], gear, prop, now.Reading.Response, watched);
        return held is not null ? new Compared(held, null) : Without(AnswerJson.Snake(why!.Value), Words(why.Value, now, baseline));
    }

    /// <summary>What is to be known of the baseline, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>In words.</summary>
    public string Sentence()
    {
        if (Held is not { } held) return $"Against the baseline: not compared; {Not!.Why}.";
        var change = held.Changes[0];
        var speed = change.SpeedFraction is { } v ? $", {Percent(v, Sd(held, speed: true))} speed" : "";
        var words = CauseWords.Of(held.Finding, change.LnSpeed is not null);
        return $"Against the baseline: {Percent(change.RpmFraction, Sd(held, speed: false))} RPM{speed}.{(words.Length > 0 ? words : " No change shown beyond the doubt: that is not the same as sound.")}";
    }

    /// <summary>The baseline in a line, and what is known of one of the two only.</summary>
    private static IEnumerable<string> Baseline(TrialAnswer now, TrialAnswer baseline)
    {
        var doubts = baseline.Trial.Doubts.Count == 0 ? "" : $" ({string.Join(", ", baseline.Trial.Doubts.Select(TrialDoubts.Code))})";
        yield return string.Create(CultureInfo.InvariantCulture, $"The baseline comes to {baseline.Trial.CorrectedRpm.Value:0} +/- {baseline.Trial.CorrectedRpm.StandardDeviation:0} RPM at reference air{doubts}.");
        if (now.Reading.Conditions.Load is null != baseline.Reading.Conditions.Load is null)
            yield return "The load of one of the two is not known: a change of load is among the causes.";
    }

    /// <summary>One standard deviation of a change, of the trial and of its baseline together [1].</summary>
    public static double Sd(AgainstBaseline held, bool speed)
    {
        var (now, then) = (held.Changes[0].Doubt, held.Baseline);
        return speed ? Math.Sqrt((now.Speed * now.Speed) + (then.Speed * then.Speed)) : Math.Sqrt((now.Rpm * now.Rpm) + (then.Rpm * then.Rpm));
    }

    private static Compared Without(string code, string why) => new(null, new NotCompared(code, why));

    /// <summary>A trial that shows no RPM at wide-open throttle shows no change of it.</summary>
    private static NotCompared? NoRpm(TrialAnswer answer, string name)
    {
        foreach (var doubt in answer.Trial.Doubts)
            if (doubt is TrialDoubt.PartThrottle or TrialDoubt.LimiterReached)
                return new NotCompared(TrialDoubts.Code(doubt), $"{name} shows no RPM at wide-open throttle ({DoubtWords.Of(doubt)})");
        return null;
    }

    private static string Words(WhyNotCompared why, TrialAnswer now, TrialAnswer baseline) => why switch
    {
        WhyNotCompared.NoDiameter => $"the prop's diameter is not known: give its size in {PropOption.Name}",
        WhyNotCompared.NoSpeed => "no speed was read at the baseline, or the boat stood still",
        WhyNotCompared.BaselineMakesNoSense =>
            "gear ratio, pitch and speed of the baseline make no sense together (slip of 2 to 80 % does): check gear=, --prop, and the unit of its speed",
        WhyNotCompared.ChangeTooLarge =>
            $"{Change(now, baseline)}: a change beyond 40 % (as a logarithm: +49 % or -33 %) is another boat or a wrong reading",
        WhyNotCompared.DoubtTooLarge => "the trial is too doubtful to weigh anything by it",
        _ => "there is no trial beside the baseline",
    };

    private static string Change(TrialAnswer now, TrialAnswer baseline)
    {
        var rpm = $"{Percent((now.Trial.CorrectedRpm.Value / baseline.Trial.CorrectedRpm.Value) - 1)} RPM";
        return now.Trial.CorrectedSpeedKnots is { Value: > 0 } v && baseline.Trial.CorrectedSpeedKnots is { Value: > 0 } v_0
            ? $"{rpm}, {Percent((v.Value / v_0.Value) - 1)} speed"
            : rpm;
    }

    private static string Percent(double fraction, double sd) => string.Create(CultureInfo.InvariantCulture, $"{100 * fraction:+0.0;-0.0;0.0} +/- {100 * sd:0.0} %");

    private static string Percent(double fraction) => string.Create(CultureInfo.InvariantCulture, $"{100 * fraction:+0.0;-0.0;0.0} %");

    private static bool AirRead(TrialAnswer answer) => answer.Reading.Conditions.Air?.Temperature is not null;
}

/// <summary>Why a trial is not held against a baseline.</summary>
/// <param name="Code">Short code: a trial's doubt, no_gear, no_prop, or a <see cref="WhyNotCompared"/>.</param>
/// <param name="Why">The same in words, without a full stop.</param>
internal sealed record NotCompared(string Code, string Why);
