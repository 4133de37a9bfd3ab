namespace FleetWake.Propulsion.Causes;

/// <summary>A covariance taken apart into a lower triangle, S = L L'; L^-1 turns rows into ones of unit noise.</summary>
internal sealed class Whitening
{
    private readonly double[,] _lower;

    /// <summary>Takes a covariance apart.</summary>
    /// <param name="covariance">Symmetric, positive definite.</param>
    /// <exception cref="ArgumentException">It is not positive definite: some reading claims no doubt at all.</exception>
    internal Whitening(double[,] covariance)
    {
        var n = covariance.GetLength(0);
        _lower = new double[n, n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j <= i; j++)
            {
                var sum = covariance[i, j];
                for (var k = 0; k < j; k++) sum -= _lower[i, k] * _lower[j, k];
                if (i != j)
                    _lower[i, j] = sum / _lower[j, j];
                else
                    _lower[i, i] = sum > 0 ? Math.Sqrt(sum) : throw new ArgumentException("A reading without any doubt cannot be weighed: give each a standard deviation above zero.", nameof(covariance));
            }

        for (var i = 0; i < n; i++) LogRootDeterminant += Math.Log(_lower[i, i]);
    }

    /// <summary>ln of the square root of the determinant.</summary>
    internal double LogRootDeterminant { get; }

    /// <summary>L^-1 x.</summary>
    internal double[] Of(double[] x)
    {
        var z = new double[x.Length];
        for (var i = 0; i < x.Length; i++)
        {
            var sum = x[i];
            for (var k = 0; k < i; k++) sum -= _lower[i, k] * z[k];
            z[i] = sum / _lower[i, i];
        }

        return z;
    }

    internal static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
