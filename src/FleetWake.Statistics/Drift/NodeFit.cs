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
    private readonly double[] _e; // n rows of 3
    private readonly double[] _h; // h_ii
    private readonly double _logDet;
    private readonly double _before;
    private readonly Quadratic _q;

    public NodeFit(Design design, in NoiseNode node, bool[] set)
    {
        (_design, _node, _set) = (design, node, set);
        var (n, p, width) = (design.Trials, design.Columns, design.Width);
        (_y, _e, _h) = (new double[n * p], new double[n * 3], new double[n]);
        Span<double> l = p <= 16 ? stackalloc double[p * p] : new double[p * p];
        Span<double> b = p <= 16 ? stackalloc double[3 * p] : new double[3 * p];
        l.Clear();
        b.Clear();
        double xx = 0, xu = 0, uu = 0;
        for (var i = 0; i < n; i++)
        {
            var v = design.Rows.AsSpan(i * width, width);
            var w = 1 / (set[i] ? node.Gross : node.Fine);
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
        _logDet = Cholesky(l, p);
        for (var k = 0; k < 3; k++) Forward(l, b.Slice(k * p, p));
        ReadOnlySpan<double> bx = b[..p], bu = b.Slice(p, p), bc = b.Slice(2 * p, p);
        _before = xx;
        _q = new(xx - Dot(bx, bx), xu - Dot(bx, bu), uu - Dot(bu, bu), -Dot(bc, bx), -Dot(bc, bu), -Dot(bc, bc));
        for (var i = 0; i < n; i++)
        {
            var (v, y, e) = (i * width, i * p, i * 3);
            var row = _y.AsSpan(y, p);
            design.Rows.AsSpan(v, p).CopyTo(row);
            Forward(l, row);
            _e[e] = design.Rows[v + p] - Dot(row, bx);
            _e[e + 1] = design.Rows[v + p + 1] - Dot(row, bu);
            _e[e + 2] = -Dot(row, bc);
            _h[i] = Dot(row, row);
        }
    }

    /// <summary>The set as it is.</summary>
    public Component Base() => Make(_q, 0, _count, -1, -1);

    /// <summary>The set with trial <paramref name="i"/> changed.</summary>
    public Component Flip(int i)
    {
        var d = Change(i);
        var det = 1 + (d * _h[i]);
        return Make(_q.Plus(_e.AsSpan(i * 3, 3), _e.AsSpan(i * 3, 3), d / det), Math.Log(det), _count + Step(i), i, -1);
    }

    /// <summary>The set with two trials changed.</summary>
    public Component Flip(int i, int j)
    {
        var (p, di, dj) = (_design.Columns, Change(i), Change(j));
        var h = Dot(_y.AsSpan(i * p, p), _y.AsSpan(j * p, p));
        var (a, b) = (1 + (di * _h[i]), 1 + (dj * _h[j]));
        var det = (a * b) - (di * dj * h * h);
        ReadOnlySpan<double> ei = _e.AsSpan(i * 3, 3), ej = _e.AsSpan(j * 3, 3);
        // (D^-1 + H)^-1 = [d_i b, -d_i d_j h; ., d_j a] / det
        var q = _q.Plus(ei, ei, di * b / det).Plus(ej, ej, dj * a / det).Plus(ei, ej, -di * dj * h / det).Plus(ej, ei, -di * dj * h / det);
        return Make(q, Math.Log(det), _count + Step(i) + Step(j), i, j);
    }

    private double Change(int i) => ((1 / _node.Gross) - (1 / _node.Fine)) * Step(i);

    private int Step(int i) => _set[i] ? -1 : 1;

    private Component Make(in Quadratic q, double logDet, int count, int first, int second)
    {
        var good = _design.Trials - count;
        var log = -0.5 * ((good * _node.LogFine) + (count * _node.LogGross) + _logDet + logDet + _design.LogDetPrior + q.Uu);
        // Where steps take up all that the hours could tell, rounding leaves a hair.
        var xx = q.Xx > 1e-12 * _before ? q.Xx : 0;
        return new(_node.Number, first, second, count, log, xx, xx > 0 ? q.Xu : 0, _design.LevelPriorMean - q.Cu, q.Cx, -q.Cc);
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

    private static void Forward(ReadOnlySpan<double> l, Span<double> v)
    {
        for (var r = 0; r < v.Length; r++) v[r] = (v[r] - Dot(l.Slice(r * v.Length, r), v[..r])) / l[(r * v.Length) + r];
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    private readonly record struct Quadratic(double Xx, double Xu, double Uu, double Cx, double Cu, double Cc)
    {
        public Quadratic Plus(ReadOnlySpan<double> e, ReadOnlySpan<double> f, double w) => new(
            Xx + (w * e[0] * f[0]), Xu + (w * e[0] * f[1]), Uu + (w * e[1] * f[1]), Cx + (w * e[2] * f[0]), Cu + (w * e[2] * f[1]), Cc + (w * e[2] * f[2]));
    }
}

/// <summary>Variances [rpm^2] of good trials and gross errors under a noise node, and log(2 pi variance).</summary>
internal readonly record struct NoiseNode(int Number, double Fine, double Gross, double LogFine, double LogGross)
{
    public static NoiseNode[] Of(DriftSettings settings, double medianRpm)
    {
        var nodes = new NoiseNode[settings.Noise.Shares.Length];
        var r2 = medianRpm * medianRpm;
        for (var j = 0; j < nodes.Length; j++)
        {
            var fine = r2 * settings.Noise.Shares[j] * settings.Noise.Shares[j];
            var gross = fine + (r2 * settings.GrossShare * settings.GrossShare);
            nodes[j] = new(j, fine, gross, Math.Log(2 * Math.PI * fine), Math.Log(2 * Math.PI * gross));
        }

        return nodes;
    }
}
