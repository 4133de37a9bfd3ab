namespace FleetWake.Statistics.Drift;

/// <summary>
/// One step under a noise node, for every set of gross errors: with f = L^-1 e_k in place of the level's row the same changes
/// of rank one and two as in <see cref="NodeFit"/>, without the determinants, which are known by then.
/// </summary>
internal sealed class StepFit
{
    private readonly NodeFit _fit;
    private readonly double[] _e; // -y_i'f
    private readonly (double X, double U, double C) _base;

    public StepFit(NodeFit fit, Design design, int column)
    {
        _fit = fit;
        var f = new double[design.Columns];
        f[column] = 1;
        NodeFit.Forward(fit.Lower, f);
        _base = (-NodeFit.Dot(f, fit.Slope), -NodeFit.Dot(f, fit.Reading), -NodeFit.Dot(f, f));
        _e = new double[design.Trials];
        for (var i = 0; i < _e.Length; i++) _e[i] = -NodeFit.Dot(fit.Y(i), f);
    }

    /// <summary>The step above its prior mean were the drift 0 [rpm], what a drift of 1 adds to it, and its variance given the drift [rpm^2].</summary>
    public (double AtNone, double PerSlope, double Variance) Of(in Component c)
    {
        var (x, u, cc) = _base;
        if (c.Flip2 >= 0)
        {
            var (i, j) = (c.Flip1, c.Flip2);
            var (ii, jj, ij, _) = _fit.Pair(i, j);
            // Row of the step times (D^-1 + H)^-1, trial by trial.
            var (wi, wj) = ((_e[i] * ii) + (_e[j] * ij), (_e[j] * jj) + (_e[i] * ij));
            x += (wi * _fit.E(i)[0]) + (wj * _fit.E(j)[0]);
            u += (wi * _fit.E(i)[1]) + (wj * _fit.E(j)[1]);
            cc += (wi * _e[i]) + (wj * _e[j]);
        }
        else if (c.Flip1 >= 0)
        {
            var w = _e[c.Flip1] * _fit.Single(c.Flip1);
            x += w * _fit.E(c.Flip1)[0];
            u += w * _fit.E(c.Flip1)[1];
            cc += w * _e[c.Flip1];
        }

        return (-u, x, -cc);
    }
}
