using FleetWake.Logbook.Boats;
using FleetWake.Logbook.Fleet;
using FleetWake.Logbook.Mountings;
using FleetWake.Propulsion;
using FleetWake.Propulsion.Response;
using FleetWake.Propulsion.Trials;

namespace FleetWake.Logbook.Findings;

/// <summary>
/// Changes of a boat's record whose size is known from elsewhere: the air between two trials of one stretch, and another pitch.
/// What RPM did then says how the engine answers.
/// </summary>
/// <param name="Model">The engine's model, as registered: engines of one model are one family.</param>
/// <param name="Power">Pairs of trials in unlike air.</param>
/// <param name="Pitch">Changes of pitch.</param>
public sealed record KnownChanges(string Model, IReadOnlyList<PowerStep> Power, IReadOnlyList<PitchStep> Pitch)
{
    /// <summary>Scatter of a double run's RPM from one trial to the next [1]; judgement, no source.</summary>
    private const double Trial = 0.0075;

    /// <summary>What wear may add between two trials [1 per 100 h]; a weak prior, no source.</summary>
    private const double WearPer100Hours = 0.005;

    /// <summary>Doubt of ln CF of one trial [1], as of a thermometer and a barometer of a dock.</summary>
    private const double Air = 0.004;

    /// <summary>Doubts of lnP [1]: what a shop makes of a repitch, and two props of unlike stamps; judgement on the scale of ISO 484.</summary>
    private const double OfRepitch = 0.015;
    private const double OfSwap = 0.021;

    /// <summary>Diameters nearer than this are alike [in]: stamps round to a quarter.</summary>
    private const double AlikeInches = 0.3;

    /// <summary>A change of power or pitch smaller than this teaches nothing [1].</summary>
    private const double Least = 0.01;

    /// <summary>A pitch beyond this is another boat's prop or a slip of the pen [1].</summary>
    private const double Most = 0.4;

    /// <summary>The known changes of a boat's engines.</summary>
    public static IEnumerable<KnownChanges> Of(BoatHistory history)
    {
        var mountings = history.Mountings
            .Select(m => (Span: m, Trials: AssessMounting.Trials(history, m, FleetPriors.Trade), Engine: history.EngineOf(m)?.Engine))
            .Where(m => m.Engine is not null && history.EngineCards.ContainsKey(m.Engine)).ToList();
        foreach (var family in mountings.GroupBy(m => history.EngineCards[m.Engine!].Model, StringComparer.Ordinal))
        {
            var power = family.SelectMany(m => Trials(m.Trials).Where(t => !t.Flags.Contains(TrialDoubt.PressureMissing)).GroupBy(t => t.Stretch).SelectMany(s => Weather(history.Boat, s))).ToList();
            var pitch = family.GroupBy(m => (m.Engine, m.Span.Fitted.Position)).SelectMany(g => NextPitch(history, [.. g.Select(m => (m.Span, m.Trials))])).ToList();
            if (power.Count + pitch.Count > 0) yield return new KnownChanges(family.Key, power, pitch);
        }
    }

    /// <summary>Trials run here whose air was read; what was brought to reference conditions elsewhere teaches nothing of the air.</summary>
    private static List<TrialFinding> Trials(IReadOnlyList<TrialFinding> trials) =>
        [.. trials.Where(t => t is { SetAside: null or SetAsideReason.HoursUnknown or SetAsideReason.OtherConditions, Normalised: false, Reference.CorrectionFactor: not null })];

    /// <summary>Trials of a stretch in pairs, the densest air with the thinnest: each trial once, so that its scatter counts once.</summary>
    private static IEnumerable<PowerStep> Weather(string boat, IEnumerable<TrialFinding> stretch)
    {
        var byAir = stretch.OrderBy(t => t.Reference!.CorrectionFactor).ToList();
        for (var (i, j) = (0, byAir.Count - 1); i < j; i++, j--)
        {
            var (dense, thin) = (byAir[i], byAir[j]);
            var lnPower = Math.Log(dense.Reference!.CorrectionFactor!.Value / thin.Reference!.CorrectionFactor!.Value);
            var hours = Math.Abs((dense.Hours - thin.Hours) ?? 100);
            if (-lnPower >= Least)
                yield return new PowerStep(
                    new Uncertain(lnPower, Air * Math.Sqrt(2)),
                    new Uncertain(Math.Log(thin.TurnedRpm / dense.TurnedRpm), Both(hours)))
                { Boat = boat };
        }
    }

    /// <summary>One mounting and the next on the same engine: another prop alike but for its pitch, or the same one back from a repitch.</summary>
    private static IEnumerable<PitchStep> NextPitch(BoatHistory history, List<(MountingSpan Span, IReadOnlyList<TrialFinding> Trials)> mountings)
    {
        foreach (var (one, next) in mountings.Zip(mountings.Skip(1)))
        {
            var (a, b) = (history.PropOf(one.Span), history.PropOf(next.Span));
            if (a is null || b is null || one.Span.To is not { } off) continue;
            if (a.Material != b.Material || a.Blades != b.Blades || Math.Abs(a.DiameterInches - b.DiameterInches) > AlikeInches) continue;
            if (Trials(one.Trials).LastOrDefault() is not { } before || Trials(next.Trials).FirstOrDefault() is not { } after) continue;
            if (history.PitchInchesAt(a.Prop, off) is { } was && history.PitchInchesAt(b.Prop, next.Span.Fitted.Entry) is { } now
                && Step(was, now, before, after, a.Prop == b.Prop ? OfRepitch : OfSwap) is { } step)
                yield return step with { Boat = history.Boat };
        }
    }

    private static PitchStep? Step(double was, double now, TrialFinding before, TrialFinding after, double doubt)
    {
        var lnPitch = Math.Log(now / was);
        return Math.Abs(lnPitch) is >= Least and <= Most
            ? new PitchStep(new Uncertain(lnPitch, doubt), new Uncertain(Math.Log(after.Reference!.Rpm / before.Reference!.Rpm), Both(Math.Abs((after.Hours - before.Hours) ?? 100))))
            : null;
    }

    /// <summary>Doubt of lnN between two trials [1].</summary>
    private static double Both(double hours) => Math.Sqrt((2 * Trial * Trial) + Math.Pow(WearPer100Hours * hours / 100, 2));
}
