using FleetWake.Propulsion.Causes;
using FleetWake.Propulsion.Response;

namespace FleetWake.Propulsion.Advice;

/// <summary>
/// Which pitch would put a boat into its band. ln N = ln N_0 + eta ln(P/P_0) + use, with the doubt of each: the reading's, eta's, that of
/// the use, and, for another pitch, what both props differ by from their stamps. What must stay within the band's top is two standard
/// deviations above that in the densest air that the boat meets, where the engine gives more: ln N + g (-ln CF).
/// </summary>
/// <remarks>
/// The owner's manual and a licensed technician win. RPM per inch is not used: what is nearly constant is the per-cent change
/// (computed; 150 to 200 rpm per inch, common practice, holds for steep props and a falling torque curve only).
/// </remarks>
public static class PitchAdvice
{
    /// <summary>Standard deviations above the expected RPM that must lie within the band's top.</summary>
    public const double DeviationsBelowTop = 2;

    /// <summary>How much surer another pitch must be before it is advised instead of the fitted one [1]; judgement, a prop costs money.</summary>
    private const double WorthAChange = 0.05;

    private static readonly Cause[] s_whenAbove = [Cause.PitchOrCupLoss, Cause.DiameterLoss, Cause.HubSlip, Cause.Ventilation, Cause.LighterLoad];
    private static readonly Cause[] s_whenBelow = [Cause.HullOrLoad, Cause.EnginePower, Cause.BladeRoughness];

    /// <summary>The advice.</summary>
    /// <param name="question">The question.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of the question is outside its range; names it.</exception>
    public static PitchTable Of(PitchQuestion question)
    {
        ArgumentNullException.ThrowIfNull(question);
        question.Check();
        var rows = Pitches(question).Select(pitch => Row(question, pitch)).ToList();
        var best = rows.Where(row => row.Verdict == PitchVerdict.Possible).OrderByDescending(Surety).FirstOrDefault();
        if (rows.Find(row => row is { Fitted: true, Verdict: PitchVerdict.Possible }) is { } fitted && Surety(fitted) >= Surety(best!) - WorthAChange)
            best = fitted;
        var at = best is null ? -1 : rows.IndexOf(best);
        if (at >= 0)
            rows[at] = rows[at] with { Verdict = PitchVerdict.Advised };
        var advised = at >= 0 ? rows[at] : null;
        return new PitchTable(rows, advised, RuleOut(question, advised?.Pitch))
        {
            DenseAirRpm = question.CorrectedRpm.Value * (Math.Exp(-question.Gain.Value * question.LnDensestAir) - 1),
        };
    }

    /// <summary>The pitches that are asked about, lowest first, the fitted one among them.</summary>
    internal static IEnumerable<Length> Pitches(PitchQuestion question) =>
        question.Available.Append(question.FittedPitch).Distinct().OrderBy(pitch => pitch.Metres);

    /// <summary>Where a pitch lands in one use.</summary>
    internal static PitchLanding Landing(PitchQuestion question, Length pitch, LoadCase use)
    {
        var x = Math.Log(pitch.Metres / question.FittedPitch.Metres);                         // ln(P/P_0) [1]
        var eta = question.PitchElasticity;                                                 // [1]
        var other = pitch == question.FittedPitch ? 0 : Math.Sqrt(2) * eta.Value * question.PitchBetweenProps;
        var lnN = Math.Log(question.CorrectedRpm.Value) + (eta.Value * x) + use.LnRpm.Value; // N in [rev/min]
        var variance = Square(question.CorrectedRpm.StandardDeviation / question.CorrectedRpm.Value)
            + Square(eta.StandardDeviation * x) + Square(other) + Square(use.LnRpm.StandardDeviation);
        var sd = Math.Sqrt(variance);
        var (g, G) = (question.Gain, -question.LnDensestAir);                               // [1]; power gained in the densest air
        var sdDense = Math.Sqrt(Math.Max(0, variance + Square(g.StandardDeviation * G) + (2 * x * G * Covariance(g, eta))));
        var above = ShareAbove(question.BandHigh, lnN, sd);
        var N = Math.Exp(lnN);
        return new PitchLanding(use.Name, new Uncertain(N, N * sd), ShareAbove(question.BandLow, lnN, sd) - above, above)
        {
            HighestRpm = Math.Exp(lnN + (g.Value * G) + (DeviationsBelowTop * sdDense)),
        };
    }

    private static PitchRow Row(PitchQuestion question, Length pitch)
    {
        var landings = question.Loads.Select(use => Landing(question, pitch, use)).ToList();
        var verdict = landings.Any(l => l.HighestRpm > question.BandHigh.RevolutionsPerMinute) ? PitchVerdict.MayOverRev
            : landings[0].Rpm.Value < question.BandLow.RevolutionsPerMinute ? PitchVerdict.Lugs
            : PitchVerdict.Possible;
        return new PitchRow(pitch, pitch == question.FittedPitch, landings, verdict);
    }

    /// <summary>The mean chance over the uses: each counts alike, for nobody said how often each is.</summary>
    private static double Surety(PitchRow row) => row.Landings.Average(l => l.InBand);

    /// <summary>More pitch than is fitted is a remedy for turning too fast, also where it is advised for a margin only; less for too slow.</summary>
    private static Cause[] RuleOut(PitchQuestion question, Length? advised) =>
        question.CorrectedRpm.Value > question.BandHigh.RevolutionsPerMinute || advised?.Metres > question.FittedPitch.Metres ? s_whenAbove
        : question.CorrectedRpm.Value < question.BandLow.RevolutionsPerMinute || advised?.Metres < question.FittedPitch.Metres ? s_whenBelow
        : [];

    /// <summary>
    /// Covariance of g and eta [1]: both hold the engine's torque slope, so an engine that gains more in dense air is held back more by pitch.
    /// That of the prior; where one of the two has been learned, as much as the line between them leaves of it.
    /// </summary>
    private static double Covariance(Uncertain g, Uncertain eta)
    {
        var prior = LearnedResponse.Prior;
        var (sg, se) = (prior.Gain.StandardDeviation, prior.PitchElasticity.StandardDeviation); // [1]
        return prior.Correlation * sg * se * Math.Min(Square(g.StandardDeviation / sg), Square(eta.StandardDeviation / se));
    }

    private static double ShareAbove(EngineRate edge, double lnN, double sd)
    {
        var d = lnN - Math.Log(edge.RevolutionsPerMinute);
        return sd > 0 ? NormalCurve.Below(d / sd) : d > 0 ? 1 : 0;
    }

    private static double Square(double x) => x * x;
}
