namespace FleetWake.Statistics.Drift.Fleet;

/// <summary>
/// For each mounting the likelihood of its trials, once for a prop that does not wear, once for each shape and mean of the
/// gamma distribution of those that do.
/// </summary>
internal sealed class WearTable
{
    /// <summary>Means: 0.7 to 100 rpm per 100 h in equal ratios.</summary>
    public const int Means = 40;
    private static readonly double Lowest = Math.Log(0.7);
    private static readonly double Step = (Math.Log(100) - Math.Log(0.7)) / (Means - 1);

    private readonly double[] _wears; // [member][shape][mean]
    private readonly double[] _sound;
    private readonly double[][] _curves; // [shape * Means + mean][grid]
    private readonly double[] _soundCurve;
    private readonly int _shapes;

    public WearTable(IReadOnlyList<double[]> likelihoods, IReadOnlyList<double> shapes, double soundSd)
    {
        _shapes = shapes.Count;
        _soundCurve = new double[SlopeGrid.Count];
        SlopePrior.Sound(_soundCurve, soundSd);
        _curves = new double[_shapes * Means][];
        for (var k = 0; k < _curves.Length; k++)
        {
            _curves[k] = new double[SlopeGrid.Count];
            SlopePrior.Wearing(_curves[k], shapes[k / Means], Math.Exp(Lowest + (Step * (k % Means))));
        }

        _sound = new double[likelihoods.Count];
        _wears = new double[likelihoods.Count * _curves.Length];
        for (var m = 0; m < likelihoods.Count; m++)
        {
            _sound[m] = Dot(likelihoods[m], _soundCurve);
            for (var k = 0; k < _curves.Length; k++) _wears[(m * _curves.Length) + k] = Dot(likelihoods[m], _curves[k]);
        }
    }

    /// <summary>Places among the means, and how far to the next, of a log mean.</summary>
    public static (int Place, double Part) Place(double logMean)
    {
        var at = Math.Clamp((logMean - Lowest) / Step, 0, Means - 1.000001);
        var place = (int)at;
        return (place, at - place);
    }

    /// <summary>Likelihood of a mounting's trials.</summary>
    public double Likelihood(int member, int shape, double logMean, double sound)
    {
        var (place, part) = Place(logMean);
        var at = (((member * _shapes) + shape) * Means) + place;
        var wears = _wears[at] + (part * (_wears[at + 1] - _wears[at]));
        return (sound * _sound[member]) + ((1 - sound) * wears);
    }

    /// <summary>Adds a prior, weighed, to a sum of priors kept by curve.</summary>
    public static void Collect(double[] sum, int shape, double logMean, double sound, double weight)
    {
        var (place, part) = Place(logMean);
        sum[^1] += weight * sound;
        sum[(shape * Means) + place] += weight * (1 - sound) * (1 - part);
        sum[(shape * Means) + place + 1] += weight * (1 - sound) * part;
    }

    public double[] NewSum() => new double[_curves.Length + 1];

    public SlopePrior Prior(double[] sum)
    {
        var weights = new double[SlopeGrid.Count];
        for (var k = 0; k < _curves.Length; k++)
        {
            if (sum[k] == 0) continue;
            for (var g = 0; g < weights.Length; g++) weights[g] += sum[k] * _curves[k][g];
        }

        var total = 0.0;
        for (var g = 0; g < weights.Length; g++) total += weights[g] += sum[^1] * _soundCurve[g];
        for (var g = 0; g < weights.Length; g++) weights[g] += total * 1e-9;
        return SlopePrior.Of(weights);
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var g = 0; g < a.Length; g++) sum += a[g] * b[g];
        return sum;
    }
}
