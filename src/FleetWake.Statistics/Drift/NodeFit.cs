using System.Runtime.Intrinsics;

namespace FleetWake.Statistics.Drift;

/// <summary>
/// A design under one noise node and one set of gross errors, and from it by a rank-one or rank-two change every set that
/// differs by one trial or two.
/// </summary>
/// <remarks>
/// With L L' = M = A'WA + P0^-1 and y_v = L^-1 v, the columns B = (x, u, now) leave Q = B'WB - y_B'y_B, which holds q_xx,
/// q_ux, q_uu and all that the level needs. A trial i whose weight changes by d adds d v_i v_i' to the whole, so that with
/// e_i = b_i - y_B'y_i and h_ij = y_i'y_j the new Q is Q + E'(D^-1 + H)^-1 E and the new determinant of M grows by that of
/// I + D H (Sherman, Morrison and Woodbury; Schur complements of a bordered matrix).
/// </remarks>
internal sealed class NodeFit
{
    private readonly Design _design;
    private readonly NoiseNode _node;
    private readonly bool[] _set;
    private readonly int _count;
    private readonly double[] _y; // n rows of p
    private readonly Vector256<double>[] _e; // e_i of x, u and now
    private readonly double[] _h; // h_ii
    private readonly double[] _change; // what a change of state adds to a trial's weight
    private readonly double[]? _logChange; // and to the sum of log(2 pi variance), where trials have variances of their own
    private readonly double[] _lower = []; // L, kept where steps are asked for
    private readonly double[] _columns = []; // L^-1 A'W (x, u), likewise
    private readonly double _logNoise;
    private readonly double _logDet;
    private readonly double _before;
    private readonly Quadratic _q;

    public NodeFit(Design design, in NoiseNode node, bool[] set)
    {
        (_design, _node, _set) = (design, node, set);
        var (n, p, width) = (design.Trials, design.Columns, design.Width);
        (_y, _e, _h, _change) = (new double[n * p], new Vector256<double>[n], new double[n], new double[n]);
        if (design.Steps.Count > 0) (_lower, _columns) = (new double[p * p], new double[3 * p]);
        if (design.OwnVariances is not null) _logChange = new double[n];
        Span<double> l = _lower.Length > 0 ? _lower : stackalloc double[p * p];
        Span<double> b = _columns.Length > 0 ? _columns : stackalloc double[3 * p];
        l.Clear();
        b.Clear();
        double xx = 0, xu = 0, uu = 0;
        for (var i = 0; i < n; i++)
        {
            var v = design.Rows.AsSpan(i * width, width);
            var w = Weigh(i);
            _count += set[i] ? 1 : 0;
            var (x, u) = (v[p], v[p + 1]);
            (xx, xu, uu) = (xx + (w * x * x), xu + (w * x * u), uu + (w * u * u));
            for (var r = 0; r < p; r++)
            {
                var wr = w * v[r];
                if (wr == 0) continue;
                b[r] += wr * x;
                b[p + r] += wr * u;
                for (var c = 0; c <= r; c++) l[(r * p) + c] += wr * v[c];
            }
        }

        design.Now.CopyTo(b[(2 * p)..]);
        for (var r = 0; r < p; r++) l[(r * p) + r] += design.PriorPrecision[r];
        _logNoise = _logChange is null ? 0 : LogNoise(_design.OwnVariances!);
        _logDet = Cholesky(l, p);
        for (var k = 0; k < 3; k++) Forward(l, b.Slice(k * p, p));
        ReadOnlySpan<double> bx = b[..p], bu = b.Slice(p, p), bc = b.Slice(2 * p, p);
        _before = xx;
        var (xu2, cx, cu) = (xu - Dot(bx, bu), -Dot(bc, bx), -Dot(bc, bu));
        _q = new(Vector256.Create(xx - Dot(bx, bx), xu2, cx, 0), Vector256.Create(xu2, uu - Dot(bu, bu), cu, 0), Vector256.Create(cx, cu, -Dot(bc, bc), 0));
        for (var i = 0; i < n; i++)
        {
            var (v, y) = (i * width, i * p);
            var row = _y.AsSpan(y, p);
            design.Rows.AsSpan(v, p).CopyTo(row);
            Forward(l, row);
            _e[i] = Vector256.Create(design.Rows[v + p] - Dot(row, bx), design.Rows[v + p + 1] - Dot(row, bu), -Dot(row, bc), 0);
            _h[i] = Dot(row, row);
        }
    }

    public ReadOnlySpan<double> Lower => _lower;

    /// <summary>L^-1 A'Wx.</summary>
    public ReadOnlySpan<double> Slope => _columns.AsSpan(0, _design.Columns);

    /// <summary>L^-1 A'Wu.</summary>
    public ReadOnlySpan<double> Reading => _columns.AsSpan(_design.Columns, _design.Columns);

    /// <summary>The set as it is.</summary>
    public Component Base() => Make(_q, 0, _count, -1, -1);

    /// <summary>The set with trial <paramref name="i"/> changed.</summary>
    public Component Flip(int i)
    {
        var d = _change[i];
        var det = 1 + (d * _h[i]);
        return Make(_q.Plus(_e[i], Vector256.Create(d / det) * _e[i]), Math.Log(det), _count + Step(i), i, -1);
    }

    /// <summary>The set with two trials changed.</summary>
    public Component Flip(int i, int j)
    {
        var (ii, jj, ij, det) = Pair(i, j);
        var cross = Vector256.Create(ij);
        var q = _q.Plus(_e[i], (Vector256.Create(ii) * _e[i]) + (cross * _e[j])).Plus(_e[j], (Vector256.Create(jj) * _e[j]) + (cross * _e[i]));
        return Make(q, Math.Log(det), _count + Step(i) + Step(j), i, j);
    }

    /// <summary>(D^-1 + H)^-1 of one changed trial.</summary>
    public double Single(int i) => _change[i] / (1 + (_change[i] * _h[i]));

    /// <summary>(D^-1 + H)^-1 = [d_i b, -d_i d_j h; ., d_j a] / det of two changed trials, and det = |I + D H|.</summary>
    public (double II, double JJ, double IJ, double Det) Pair(int i, int j)
    {
        var (di, dj) = (_change[i], _change[j]);
        var h = Dot(Y(i), Y(j));
        var (a, b) = (1 + (di * _h[i]), 1 + (dj * _h[j]));
        var det = (a * b) - (di * dj * h * h);
        var part = 1 / det;
        return (di * b * part, dj * a * part, -di * dj * h * part, det);
    }

    /// <summary>L^-1 a_i.</summary>
    public ReadOnlySpan<double> Y(int i) => _y.AsSpan(i * _design.Columns, _design.Columns);

    /// <summary>e_i of x, u and now.</summary>
    public Vector256<double> E(int i) => _e[i];

    /// <summary>The weight of a trial as the set has it; on the way what a change of its state would do.</summary>
    private double Weigh(int i)
    {
        var own = _design.OwnVariances?[i] ?? 0;
        var (fine, gross) = (1 / _node.Variance(false, own), 1 / _node.Variance(true, own));
        _change[i] = (gross - fine) * Step(i);
        if (_logChange is not null) _logChange[i] = Math.Log(fine / gross) * Step(i);
        return _set[i] ? gross : fine;
    }

    /// <summary>The sum of log(2 pi variance) over all trials as the set has them.</summary>
    private double LogNoise(double[] own)
    {
        var log = 0.0;
        for (var i = 0; i < own.Length; i++) log += Math.Log(2 * Math.PI * _node.Variance(_set[i], own[i]));
        return log;
    }

    private int Step(int i) => _set[i] ? -1 : 1;

    private Component Make(in Quadratic q, double logDet, int count, int first, int second)
    {
        var noise = _logChange is { } change
            ? _logNoise + (first >= 0 ? change[first] : 0) + (second >= 0 ? change[second] : 0)
            : ((_design.Trials - count) * _node.LogFine) + (count * _node.LogGross);
        var log = -0.5 * (noise + _logDet + logDet + _design.LogDetPrior + q.U[1]);
        // Where steps take up all that the hours could tell, rounding leaves a hair.
        var xx = q.X[0] > 1e-12 * _before ? q.X[0] : 0;
        return new(_node.Number, first, second, count, log, xx, xx > 0 ? q.X[1] : 0, _design.LevelPriorMean - q.U[2], q.X[2], -q.Now[2]);
    }

    /// <summary>Becomes the lower triangle L; returns the log determinant of the whole.</summary>
    private static double Cholesky(Span<double> m, int p)
    {
        var log = 0.0;
        for (var j = 0; j < p; j++)
        {
            var rowJ = m.Slice(j * p, p);
            var d = rowJ[j] - Dot(rowJ[..j], rowJ[..j]);
            log += Math.Log(d);
            rowJ[j] = Math.Sqrt(d);
            for (var i = j + 1; i < p; i++)
            {
                var rowI = m.Slice(i * p, p);
                rowI[j] = (rowI[j] - Dot(rowI[..j], rowJ[..j])) / rowJ[j];
            }
        }

        return log;
    }

    public static void Forward(ReadOnlySpan<double> l, Span<double> v)
    {
        for (var r = 0; r < v.Length; r++) v[r] = (v[r] - Dot(l.Slice(r * v.Length, r), v[..r])) / l[(r * v.Length) + r];
    }

    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    /// <summary>Q, row by row: of x, of u and of the level now.</summary>
    private readonly record struct Quadratic(Vector256<double> X, Vector256<double> U, Vector256<double> Now)
    {
        /// <summary>With the product of a column and a row added.</summary>
        public Quadratic Plus(Vector256<double> e, Vector256<double> row) =>
            new(X + (Vector256.Create(e[0]) * row), U + (Vector256.Create(e[1]) * row), Now + (Vector256.Create(e[2]) * row));
    }
}
