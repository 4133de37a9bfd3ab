namespace FleetWake.Propulsion.Causes;

/// <summary>
/// The evidence of a case as one linear-Gaussian reading: y = s a + noise, where s is the size of whatever is suspected, a its
/// response at every row, and the noise is that of trials, of their baselines and of what props of one size differ by. The gain's
/// doubt is one number for all: at every row it moves the change by s_g (ln CF of the trial - ln CF of its baseline).
/// </summary>
internal sealed class CauseRows
{
    /// <summary>Weight, in readings, of the claimed doubts when they are held against the scatter of trials; judgement.</summary>
    private const double FaithInClaims = 4;

    private readonly CauseCase _case;
    private readonly List<Row> _rows = [];
    private readonly double[,] _own; // covariance of trials and baselines, the same for every model

    internal CauseRows(CauseCase given)
    {
        _case = given;
        foreach (var group in given.WideOpen.GroupBy(w => (w.Boat, w.Prop, HasSpeed: w.LnSpeed is not null)))
            Add(group.Key.Boat, group.Key.Prop, [.. group], group.Key.HasSpeed);
        foreach (var point in given.PartThrottle)
            _rows.Add(new Row(Kind.SpeedAtRpm, point.Boat, point.Prop, default, point.LnSpeed.Value, Square(point.LnSpeed.StandardDeviation), 0, 0));
        foreach (var gauge in given.Gauges)
            _rows.Add(new Row(Kind.Gauge, null, gauge.Prop, gauge.Cause, gauge.Loss.Value, Square(gauge.Loss.StandardDeviation), 0, 0));
        Y = [.. _rows.Select(row => row.Y)];
        _own = OwnCovariance();
    }

    private enum Kind { Rpm, Speed, SpeedAtRpm, Gauge }

    /// <summary>What was read.</summary>
    internal double[] Y { get; }

    /// <summary>The rows' response to one cause at one boat or prop.</summary>
    /// <param name="model">The model.</param>
    /// <param name="cause">The cause.</param>
    /// <param name="where">The boat or the prop that has it.</param>
    internal double[] Response(ResponseModel model, Cause cause, string where)
    {
        var of = CauseResponse.Of(cause, model);
        var withProp = CauseFacts.TravelsWithProp(cause);
        return [.. _rows.Select(row => (withProp ? row.Prop : row.Boat) != where ? 0 : Of(row, of, cause))];
    }

    /// <summary>The covariance of the rows' noise under a model.</summary>
    internal double[,] Covariance(ResponseModel model)
    {
        var covariance = (double[,])_own.Clone();
        var pitch = CauseResponse.Of(Cause.PitchOrCupLoss, model);
        foreach (var prop in _rows.Select(row => row.Prop).Concat(_case.Baselines.Select(b => b.Prop)).Distinct())
        {
            // A prop that is not the baseline's brings a pitch of its own, which is no change of anything.
            var shift = _rows.Select(row => row.Kind == Kind.Gauge ? 0 : Of(row, pitch, Cause.PitchOrCupLoss) * Offset(row, prop)).ToArray();
            AddOuter(covariance, shift, Square(_case.PitchBetweenProps));
        }

        return covariance;
    }

    internal static void AddOuter(double[,] matrix, double[] vector, double weight)
    {
        for (var i = 0; i < vector.Length; i++)
            for (var j = 0; j < vector.Length; j++)
                matrix[i, j] += weight * vector[i] * vector[j];
    }

    private static double Of(Row row, CauseResponse response, Cause cause) => row.Kind switch
    {
        Kind.Rpm => response.LnRpm,
        Kind.Speed => response.LnSpeed,
        Kind.SpeedAtRpm => response.LnSpeedAtRpm,
        _ => row.Gauged == cause ? 1 : 0,
    };

    private int Offset(Row row, string prop) =>
        (row.Prop == prop ? 1 : 0) - (_case.Baselines.First(b => b.Boat == row.Boat).Prop == prop ? 1 : 0);

    private double[,] OwnCovariance()
    {
        var n = _rows.Count;
        var covariance = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            covariance[i, i] = _rows[i].Variance;
            if (_rows[i].Kind == Kind.Speed && i > 0 && _rows[i].WithRpm != 0)
                covariance[i, i - 1] = covariance[i - 1, i] = _rows[i].WithRpm;
        }

        foreach (var baseline in _case.Baselines)
            for (var i = 0; i < n; i++)
                for (var j = 0; j < n; j++)
                    if (_rows[i].Boat == baseline.Boat && _rows[j].Boat == baseline.Boat)
                        covariance[i, j] += Shared(baseline.Doubt.Own(), _rows[i].Kind, _rows[j].Kind);
        AddOuter(covariance, [.. _rows.Select(row => row.ByGain - OfBaseline(row))], 1);
        return covariance;
    }

    private double OfBaseline(Row row) => row.Kind switch
    {
        Kind.Rpm => _case.Baselines.First(b => b.Boat == row.Boat).Doubt.ByGain,
        Kind.Speed => _case.Baselines.First(b => b.Boat == row.Boat).Doubt.SpeedByGain,
        _ => 0, // speeds as read, and gauges: nothing was corrected
    };

    private static double Shared(ChangeDoubt doubt, Kind i, Kind j) => (i, j) switch
    {
        (Kind.Rpm, Kind.Rpm) => Square(doubt.Rpm),
        (Kind.Speed, Kind.Speed) => Square(doubt.Speed),
        (Kind.Rpm, Kind.Speed) or (Kind.Speed, Kind.Rpm) => doubt.Correlation * doubt.Rpm * doubt.Speed,
        _ => 0, // a point at lower RPM has a baseline point of its own, whose doubt it carries itself
    };

    /// <summary>Brings the trials of one mounting to their weighted mean, whose doubt grows when they scatter more than they claim.</summary>
    private void Add(string boat, string prop, WideOpenChange[] trials, bool hasSpeed)
    {
        if (!hasSpeed)
        {
            var alone = Array.ConvertAll(trials, t => (t.LnRpm, t.Doubt.ByGain, Sd: (t.Doubt with { SpeedByGain = 0 }).Own().Rpm));
            var (mean, byGain, variance) = (0.0, 0.0, 1 / alone.Sum(t => 1 / Square(t.Sd)));
            foreach (var t in alone) (mean, byGain) = (mean + (t.LnRpm * variance / Square(t.Sd)), byGain + (t.ByGain * variance / Square(t.Sd)));
            var q = alone.Sum(t => Square((t.LnRpm - mean) / t.Sd));
            _rows.Add(new Row(Kind.Rpm, boat, prop, default, mean, variance * Widening(q, trials.Length - 1), 0, byGain));
            return;
        }

        var (pxx, pxv, pvv, bx, bv) = (0.0, 0.0, 0.0, 0.0, 0.0); // precision and precision-weighted sum
        var (gx, gv) = (0.0, 0.0);                               // the same sum of the gain's part
        foreach (var t in trials)
        {
            var (xx, xv, vv) = Precision(t.Doubt.Own());
            (pxx, pxv, pvv) = (pxx + xx, pxv + xv, pvv + vv);
            (bx, bv) = (bx + (xx * t.LnRpm) + (xv * t.LnSpeed!.Value), bv + (xv * t.LnRpm) + (vv * t.LnSpeed.Value));
            (gx, gv) = (gx + (xx * t.Doubt.ByGain) + (xv * t.Doubt.SpeedByGain), gv + (xv * t.Doubt.ByGain) + (vv * t.Doubt.SpeedByGain));
        }

        var det = (pxx * pvv) - (pxv * pxv);
        var (x, v) = (((pvv * bx) - (pxv * bv)) / det, ((pxx * bv) - (pxv * bx)) / det);
        var chi = trials.Sum(t => Precision(t.Doubt.Own()) is var p ? (p.Rpm * Square(t.LnRpm - x)) + (2 * p.Both * (t.LnRpm - x) * (t.LnSpeed!.Value - v)) + (p.Speed * Square(t.LnSpeed.Value - v)) : 0);
        var wider = Widening(chi, 2 * (trials.Length - 1));
        _rows.Add(new Row(Kind.Rpm, boat, prop, default, x, wider * pvv / det, 0, ((pvv * gx) - (pxv * gv)) / det));
        _rows.Add(new Row(Kind.Speed, boat, prop, default, v, wider * pxx / det, wider * -pxv / det, ((pxx * gv) - (pxv * gx)) / det));
    }

    private static (double Rpm, double Both, double Speed) Precision(ChangeDoubt d)
    {
        var free = 1 - Square(d.Correlation);
        return (1 / (free * Square(d.Rpm)), -d.Correlation / (free * d.Rpm * d.Speed), 1 / (free * Square(d.Speed)));
    }

    private static double Widening(double chiSquared, int degrees) =>
        Math.Max(1, (chiSquared + FaithInClaims) / (degrees + FaithInClaims));

    private static double Square(double x) => x * x;

    private sealed record Row(Kind Kind, string? Boat, string Prop, Cause Gauged, double Y, double Variance, double WithRpm, double ByGain);
}
