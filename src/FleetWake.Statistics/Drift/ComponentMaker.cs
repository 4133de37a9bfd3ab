namespace FleetWake.Statistics.Drift;

/// <summary>Works out the components of a design, one noise node and one set of gross errors at a time.</summary>
/// <remarks>
/// The columns (x, u, now) are carried along while the p columns of A are eliminated from M = A'WA + P0^-1; what remains of
/// them is Q = B'WB - B'WA M^-1 A'WB, which holds q_xx, q_ux, q_uu and all that the level needs. One elimination, no solve.
/// </remarks>
internal sealed class ComponentMaker
{
    private readonly Design _design;
    private readonly double[] _total;
    private readonly double[] _work;
    private readonly int _width;
    private readonly int _carried;

    public ComponentMaker(Design design)
    {
        _design = design;
        _width = design.Width;
        _carried = _width + 1; // with the column of "now"
        _total = new double[_width * _width];
        _work = new double[_carried * _carried];
        for (var i = 0; i < design.Trials; i++) Add(_total, i, 1);
    }

    /// <summary>The component of one noise node and a set of gross errors.</summary>
    /// <param name="node">Its number, for the record.</param>
    /// <param name="fine">Variance of a good trial [rpm^2].</param>
    /// <param name="gross">Variance of a gross error [rpm^2].</param>
    /// <param name="set">The gross errors: their sum of v v' and how many.</param>
    public Component Make(int node, double fine, double gross, in GrossSum set)
    {
        var (p, width, carried) = (_design.Columns, _width, _carried);
        var (w0, w1) = (1 / fine, (1 / gross) - (1 / fine));
        var m = _work;
        for (var i = 0; i < width; i++)
        {
            var row = i * carried;
            for (var j = i; j < width; j++)
                m[row + j] = (w0 * _total[(i * width) + j]) + (set.Count > 0 ? w1 * set.Sum[(i * width) + j] : 0);
            m[row + width] = i < p ? _design.Now[i] : 0;
        }

        m[(width * carried) + width] = 0;
        for (var i = 0; i < p; i++) m[(i * carried) + i] += _design.PriorPrecision[i];

        var logDet = 0.0;
        for (var k = 0; k < p; k++)
        {
            var pivot = m[(k * carried) + k];
            logDet += Math.Log(pivot);
            var inverse = 1 / pivot;
            for (var i = k + 1; i < carried; i++)
            {
                var f = m[(k * carried) + i] * inverse;
                if (f == 0) continue;
                var (from, to) = (k * carried, i * carried);
                for (var j = i; j < carried; j++) m[to + j] -= f * m[from + j];
            }
        }

        var (x, u, c) = (p, p + 1, p + 2);
        var n = _design.Trials;
        var log = -0.5 * ((n * Math.Log(2 * Math.PI)) + ((n - set.Count) * Math.Log(fine)) + (set.Count * Math.Log(gross))
            + logDet + _design.LogDetPrior + m[(u * carried) + u]);
        // Rounding may leave a hair below zero where all trials share one hour.
        var xx = Math.Max(0, m[(x * carried) + x]);
        return new(node, set.First, set.Second, set.Count, log, xx, xx > 0 ? m[(x * carried) + u] : 0,
            _design.LevelPriorMean - m[(u * carried) + c], m[(x * carried) + c], -m[(c * carried) + c]);
    }

    /// <summary>Adds sign v v' of a trial to a sum.</summary>
    public void Add(double[] sum, int trial, double sign)
    {
        var v = _design.Rows.AsSpan(trial * _width, _width);
        for (var i = 0; i < _width; i++)
        {
            for (var j = i; j < _width; j++) sum[(i * _width) + j] += sign * v[i] * v[j];
        }
    }

    public double[] NewSum() => new double[_width * _width];

    /// <param name="Sum">Sum of v v' over the gross errors.</param>
    /// <param name="Count">How many.</param>
    /// <param name="First">First trial that differs from the base set, or -1.</param>
    /// <param name="Second">Second one, or -1.</param>
    public readonly record struct GrossSum(double[] Sum, int Count, int First, int Second);
}
