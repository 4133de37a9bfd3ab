using FleetWake.Propulsion.OpenWater;

namespace FleetWake.Propulsion.Balance;

/// <summary>
/// One boat through several models at once: every series, engine and hull exponent that might be true, each calibrated to the same
/// baseline. How far they part is what the model does not know, and is carried beside the noise of trials.
/// </summary>
/// <remarks>
/// Each model counts the same; the spread is that of these models and not a probability from data. The engine's slope decides most
/// of it (a factor of two), the series some 8 % of a change of pitch and a quarter of one of diameter.
/// </remarks>
public sealed class ModelSpread
{
    private readonly WotBalance[] _models;

    private ModelSpread(WotBalance[] models, OpenWaterSeries[] withoutThrust) =>
        (_models, WithoutThrust) = (models, withoutThrust);

    /// <summary>The models, each calibrated to the baseline.</summary>
    public IReadOnlyList<WotBalance> Models => _models;

    /// <summary>
    /// Series left out because by them the prop has no thrust at the measured slip. When there are any, the pitch given is likely too
    /// low; see <see cref="EffectivePitch"/>.
    /// </summary>
    public IReadOnlyList<OpenWaterSeries> WithoutThrust { get; }

    /// <summary>How many of the models extrapolate their series at the baseline.</summary>
    public int Extrapolating => _models.Count(model => model.AtBaseline.Extrapolated);

    /// <summary>The gain g [1]; with the default models about 0.38, sd 0.09, for a planing outboard.</summary>
    public Uncertain Gain => Over(slopes => slopes.Gain);

    /// <summary>kappa [1].</summary>
    public Uncertain Kappa => Over(slopes => slopes.Kappa);

    /// <summary>dlnN/dlnP [1]; with the default models about -0.73, sd 0.15.</summary>
    public Uncertain RateByPitch => Over(slopes => slopes.RateByPitch);

    /// <summary>
    /// All series, engines that are cubic and straight with slopes of -0.5 and -2, and exponents of 1, the baseline's own and 2: the
    /// range in which an outboard on plane is likely to be (engineering judgement, no source).
    /// </summary>
    /// <param name="baseline">What was measured; of its torque curve only the rated rate is used.</param>
    /// <exception cref="ArgumentOutOfRangeException">As for <see cref="Of(WotBaseline, IEnumerable{OpenWaterSeries},
    /// IEnumerable{TorqueCurve}, IEnumerable{double})"/>.</exception>
    public static ModelSpread Of(WotBaseline baseline)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        var rated = baseline.Torque.Rated;
        return Of(
            baseline, OpenWaterSeries.All,
            [TorqueCurve.Cubic(rated), TorqueCurve.Linear(rated, -0.5), TorqueCurve.Linear(rated, -2)],
            [1, baseline.ResistanceExponent, 2]);
    }

    /// <summary>Every combination of the given series, engines and exponents.</summary>
    /// <param name="baseline">What was measured.</param>
    /// <param name="series">Series, at least one.</param>
    /// <param name="engines">Torque curves, at least one.</param>
    /// <param name="resistanceExponents">Exponents m [1], 0.2 to 4, at least one.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of <paramref name="baseline"/> or an exponent outside its range.</exception>
    /// <exception cref="ArgumentException">A list without members, or no series by which the prop has thrust.</exception>
    public static ModelSpread Of(
        WotBaseline baseline, IEnumerable<OpenWaterSeries> series, IEnumerable<TorqueCurve> engines,
        IEnumerable<double> resistanceExponents)
    {
        ArgumentNullException.ThrowIfNull(baseline);
        ArgumentNullException.ThrowIfNull(series);
        baseline.Check();
        var all = series.ToArray();
        var carrying = all.Where(one => WotBalance.HasThrust(one, baseline)).ToArray();
        var models =
            from one in carrying
            from engine in engines
            from m in resistanceExponents
            select new WotBalance(one, baseline with { Torque = engine, ResistanceExponent = m });
        var made = models.ToArray();
        return made.Length > 0
            ? new ModelSpread(made, [.. all.Except(carrying)])
            : throw new ArgumentException(
                "No model is left: a list is without members, or the prop has no thrust at the measured slip by any series.",
                nameof(series));
    }

    /// <summary>Where the models say that the boat settles, and how far they part. Solves each in full; allocates nothing.</summary>
    /// <param name="state">How the boat differs from its baseline.</param>
    /// <exception cref="ArgumentOutOfRangeException">A member of <paramref name="state"/> outside its range, named.</exception>
    public ShiftSpread Shift(in BoatState state)
    {
        double meanN = 0, meanV = 0, sumNN = 0, sumVV = 0, sumNV = 0;
        for (var i = 0; i < _models.Length; i++)
        {
            var shift = BalanceShift.Between(_models[i].Baseline, _models[i].Solve(state), 0);
            // Welford's update (Technometrics 4, 1962), for two numbers.
            var (dN, dV) = (shift.LnRate - meanN, shift.LnSpeed - meanV);
            meanN += dN / (i + 1);
            meanV += dV / (i + 1);
            sumNN += dN * (shift.LnRate - meanN);
            sumVV += dV * (shift.LnSpeed - meanV);
            sumNV += dN * (shift.LnSpeed - meanV);
        }

        var count = _models.Length;
        return new ShiftSpread(
            new Uncertain(meanN, Math.Sqrt(Math.Max(0, sumNN / count))),
            new Uncertain(meanV, Math.Sqrt(Math.Max(0, sumVV / count))), sumNV / count);
    }

    private Uncertain Over(Func<BalanceSlopes, double> pick)
    {
        var values = _models.Select(model => pick(model.Slopes)).ToArray();
        var mean = values.Average();
        return new Uncertain(mean, Math.Sqrt(values.Average(value => (value - mean) * (value - mean))));
    }
}
