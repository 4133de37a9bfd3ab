namespace FleetWake.Propulsion.OpenWater;

/// <summary>A polynomial of the third degree in J: c0 + c1 J + c2 J^2 + c3 J^3.</summary>
internal readonly record struct Cubic(double C0, double C1, double C2, double C3)
{
    public static Cubic operator +(Cubic left, Cubic right) =>
        new(left.C0 + right.C0, left.C1 + right.C1, left.C2 + right.C2, left.C3 + right.C3);

    internal Cubic Raised(double by) => this with { C0 = C0 + by };

    internal Cubic Times(double k) => new(k * C0, k * C1, k * C2, k * C3);

    internal double At(double J) => C0 + (J * (C1 + (J * (C2 + (J * C3)))));

    internal double SlopeAt(double J) => C1 + (J * ((2 * C2) + (3 * J * C3)));
}

/// <summary>Gathers a series' terms into cubics in J for one shape.</summary>
internal static class Cubics
{
    /// <summary>Sum of terms, and its derivative by P/D.</summary>
    internal static (Cubic Value, Cubic ByPitch) Of(
        SeriesTerm[] terms, double pitchRatio, double area, double blades, double reynoldsL = 1)
    {
        Span<double> P = stackalloc double[7]; // (P/D)^t [1]
        Span<double> A = stackalloc double[3]; // A^u [1]
        Span<double> Z = stackalloc double[3]; // Z^v [1]
        Span<double> L = stackalloc double[3]; // L^w [1]
        Span<double> c = stackalloc double[4];
        Span<double> d = stackalloc double[4];
        Powers(P, pitchRatio);
        Powers(A, area);
        Powers(Z, blades);
        Powers(L, reynoldsL);
        c.Clear();
        d.Clear();
        foreach (ref readonly var term in terms.AsSpan())
        {
            var k = term.C * A[term.U] * Z[term.V] * L[term.W];
            c[term.S] += k * P[term.T];
            if (term.T > 0)
                d[term.S] += k * term.T * P[term.T - 1];
        }

        return (new(c[0], c[1], c[2], c[3]), new(d[0], d[1], d[2], d[3]));
    }

    private static void Powers(Span<double> powers, double x)
    {
        powers[0] = 1;
        for (var i = 1; i < powers.Length; i++)
            powers[i] = powers[i - 1] * x;
    }
}
